using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Umpirage.Store.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class Swaps : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Swaps",
                columns: table => new
                {
                    Key = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    Game = table.Column<string>(type: "TEXT", nullable: false),
                    Place = table.Column<string>(type: "TEXT", nullable: false),
                    Other = table.Column<string>(type: "TEXT", nullable: false),
                    OtherGame = table.Column<string>(type: "TEXT", nullable: true),
                    OtherPlace = table.Column<string>(type: "TEXT", nullable: true),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    State = table.Column<string>(type: "TEXT", nullable: false),
                    Yes = table.Column<string>(type: "TEXT", nullable: true),
                    OtherYes = table.Column<string>(type: "TEXT", nullable: true),
                    DecidedBy = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Swaps", x => x.Key);
                    table.ForeignKey(
                        name: "FK_Swaps_Games_Game",
                        column: x => x.Game,
                        principalTable: "Games",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Swaps_Games_OtherGame",
                        column: x => x.OtherGame,
                        principalTable: "Games",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Swaps_People_Other",
                        column: x => x.Other,
                        principalTable: "People",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Swaps_People_Person",
                        column: x => x.Person,
                        principalTable: "People",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Swaps_Game",
                table: "Swaps",
                column: "Game");

            migrationBuilder.CreateIndex(
                name: "IX_Swaps_Other",
                table: "Swaps",
                column: "Other");

            migrationBuilder.CreateIndex(
                name: "IX_Swaps_OtherGame",
                table: "Swaps",
                column: "OtherGame");

            migrationBuilder.CreateIndex(
                name: "IX_Swaps_Person",
                table: "Swaps",
                column: "Person");

            migrationBuilder.CreateIndex(
                name: "IX_Swaps_State",
                table: "Swaps",
                column: "State");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Swaps");
        }
    }
}
