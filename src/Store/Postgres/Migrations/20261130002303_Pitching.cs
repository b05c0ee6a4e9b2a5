using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Umpirage.Store.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class Pitching : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropPrimaryKey(
                name: "PK_Appearances",
                table: "Appearances");

            migrationBuilder.AddColumn<string>(
                name: "RestOf",
                table: "Games",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "Day",
                table: "Appearances",
                type: "date",
                nullable: false,
                defaultValue: new DateOnly(1, 1, 1));

            migrationBuilder.AddColumn<int>(
                name: "Entry",
                table: "Appearances",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "Outs",
                table: "Appearances",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            // a line written before belongs to its game's own day
            migrationBuilder.Sql("UPDATE \"Appearances\" SET \"Day\" = (SELECT \"Start\"::date FROM \"Games\" WHERE \"Games\".\"Key\" = \"Appearances\".\"Game\"), \"Entry\" = 1");

            migrationBuilder.AddPrimaryKey(
                name: "PK_Appearances",
                table: "Appearances",
                columns: new[] { "Game", "Player", "Counter", "Day", "Entry" });

            migrationBuilder.CreateTable(
                name: "Blackouts",
                columns: table => new
                {
                    Kind = table.Column<string>(type: "text", nullable: false),
                    Of = table.Column<string>(type: "text", nullable: false),
                    From = table.Column<DateOnly>(type: "date", nullable: false),
                    Until = table.Column<DateOnly>(type: "date", nullable: false),
                    Reason = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Blackouts", x => new { x.Kind, x.Of, x.From });
                });

            migrationBuilder.CreateTable(
                name: "Moves",
                columns: table => new
                {
                    Plan = table.Column<string>(type: "text", nullable: false),
                    Game = table.Column<string>(type: "text", nullable: false),
                    FromDiamond = table.Column<string>(type: "text", nullable: false),
                    FromStart = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    FromStatus = table.Column<string>(type: "text", nullable: false),
                    ToDiamond = table.Column<string>(type: "text", nullable: false),
                    ToStart = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    ToStatus = table.Column<string>(type: "text", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    By = table.Column<string>(type: "text", nullable: false),
                    TakesBack = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Moves", x => new { x.Plan, x.Game });
                    table.ForeignKey(
                        name: "FK_Moves_Games_Game",
                        column: x => x.Game,
                        principalTable: "Games",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Moves_Game",
                table: "Moves",
                column: "Game");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Blackouts");

            migrationBuilder.DropTable(
                name: "Moves");

            migrationBuilder.DropPrimaryKey(
                name: "PK_Appearances",
                table: "Appearances");

            migrationBuilder.DropColumn(
                name: "RestOf",
                table: "Games");

            migrationBuilder.DropColumn(
                name: "Day",
                table: "Appearances");

            migrationBuilder.DropColumn(
                name: "Entry",
                table: "Appearances");

            migrationBuilder.DropColumn(
                name: "Outs",
                table: "Appearances");

            migrationBuilder.AddPrimaryKey(
                name: "PK_Appearances",
                table: "Appearances",
                columns: new[] { "Game", "Player", "Counter" });
        }
    }
}
