using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Umpirage.Store.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class Published : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "FeedKeys",
                columns: table => new
                {
                    Person = table.Column<string>(type: "text", nullable: false),
                    Digest = table.Column<string>(type: "text", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_FeedKeys", x => x.Person);
                    table.ForeignKey(
                        name: "FK_FeedKeys_People_Person",
                        column: x => x.Person,
                        principalTable: "People",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Frozen",
                columns: table => new
                {
                    Game = table.Column<string>(type: "text", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Frozen", x => x.Game);
                    table.ForeignKey(
                        name: "FK_Frozen_Games_Game",
                        column: x => x.Game,
                        principalTable: "Games",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Published",
                columns: table => new
                {
                    Game = table.Column<string>(type: "text", nullable: false),
                    Place = table.Column<string>(type: "text", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Person = table.Column<string>(type: "text", nullable: true),
                    Diamond = table.Column<string>(type: "text", nullable: false),
                    Start = table.Column<DateTime>(type: "timestamp without time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Published", x => new { x.Game, x.Place, x.At });
                    table.ForeignKey(
                        name: "FK_Published_Diamonds_Diamond",
                        column: x => x.Diamond,
                        principalTable: "Diamonds",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Published_Games_Game",
                        column: x => x.Game,
                        principalTable: "Games",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Published_People_Person",
                        column: x => x.Person,
                        principalTable: "People",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_FeedKeys_Digest",
                table: "FeedKeys",
                column: "Digest",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Published_At",
                table: "Published",
                column: "At");

            migrationBuilder.CreateIndex(
                name: "IX_Published_Diamond",
                table: "Published",
                column: "Diamond");

            migrationBuilder.CreateIndex(
                name: "IX_Published_Person",
                table: "Published",
                column: "Person");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "FeedKeys");

            migrationBuilder.DropTable(
                name: "Frozen");

            migrationBuilder.DropTable(
                name: "Published");
        }
    }
}
