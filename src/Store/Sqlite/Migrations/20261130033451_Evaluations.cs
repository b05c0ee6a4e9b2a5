using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Umpirage.Store.Sqlite.Migrations
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
                    Key = table.Column<string>(type: "TEXT", nullable: false),
                    Umpire = table.Column<string>(type: "TEXT", nullable: false),
                    Evaluator = table.Column<string>(type: "TEXT", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Game = table.Column<string>(type: "TEXT", nullable: false),
                    Form = table.Column<string>(type: "TEXT", nullable: false),
                    Division = table.Column<string>(type: "TEXT", nullable: false),
                    Crew = table.Column<int>(type: "INTEGER", nullable: false),
                    MinutesWatched = table.Column<int>(type: "INTEGER", nullable: false),
                    Conditions = table.Column<string>(type: "TEXT", nullable: false),
                    Marks = table.Column<string>(type: "TEXT", nullable: false),
                    Strengths = table.Column<string>(type: "TEXT", nullable: false),
                    Goals = table.Column<string>(type: "TEXT", nullable: false),
                    OwnView = table.Column<string>(type: "TEXT", nullable: false),
                    Reply = table.Column<string>(type: "TEXT", nullable: false)
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
