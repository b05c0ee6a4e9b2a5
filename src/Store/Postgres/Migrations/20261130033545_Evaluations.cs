using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Umpirage.Store.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class Evaluations : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Evaluations",
                columns: table => new
                {
                    Key = table.Column<string>(type: "text", nullable: false),
                    Umpire = table.Column<string>(type: "text", nullable: false),
                    Evaluator = table.Column<string>(type: "text", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    Game = table.Column<string>(type: "text", nullable: false),
                    Form = table.Column<string>(type: "text", nullable: false),
                    Division = table.Column<string>(type: "text", nullable: false),
                    Crew = table.Column<int>(type: "integer", nullable: false),
                    MinutesWatched = table.Column<int>(type: "integer", nullable: false),
                    Conditions = table.Column<string>(type: "text", nullable: false),
                    Marks = table.Column<string>(type: "text", nullable: false),
                    Strengths = table.Column<string>(type: "text", nullable: false),
                    Goals = table.Column<string>(type: "text", nullable: false),
                    OwnView = table.Column<string>(type: "text", nullable: false),
                    Reply = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Evaluations", x => x.Key);
                    table.ForeignKey(
                        name: "FK_Evaluations_Games_Game",
                        column: x => x.Game,
                        principalTable: "Games",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Evaluations_People_Evaluator",
                        column: x => x.Evaluator,
                        principalTable: "People",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Evaluations_People_Umpire",
                        column: x => x.Umpire,
                        principalTable: "People",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Evaluations_Evaluator",
                table: "Evaluations",
                column: "Evaluator");

            migrationBuilder.CreateIndex(
                name: "IX_Evaluations_Game",
                table: "Evaluations",
                column: "Game");

            migrationBuilder.CreateIndex(
                name: "IX_Evaluations_Umpire",
                table: "Evaluations",
                column: "Umpire");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Evaluations");
        }
    }
}
