using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Umpirage.Store.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class Clinic : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Answers",
                columns: table => new
                {
                    Person = table.Column<string>(type: "text", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Question = table.Column<string>(type: "text", nullable: false),
                    Unit = table.Column<string>(type: "text", nullable: false),
                    Sheet = table.Column<string>(type: "text", nullable: false),
                    Code = table.Column<string>(type: "text", nullable: false),
                    Edition = table.Column<string>(type: "text", nullable: false),
                    Answer = table.Column<string>(type: "text", nullable: false),
                    Right = table.Column<bool>(type: "boolean", nullable: false),
                    Seconds = table.Column<int>(type: "integer", nullable: false),
                    Form = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Answers", x => new { x.Person, x.At, x.Question });
                    table.ForeignKey(
                        name: "FK_Answers_People_Person",
                        column: x => x.Person,
                        principalTable: "People",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Attendances",
                columns: table => new
                {
                    Person = table.Column<string>(type: "text", nullable: false),
                    Unit = table.Column<string>(type: "text", nullable: false),
                    Day = table.Column<DateOnly>(type: "date", nullable: false),
                    TaughtBy = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Attendances", x => new { x.Person, x.Unit, x.Day });
                    table.ForeignKey(
                        name: "FK_Attendances_People_Person",
                        column: x => x.Person,
                        principalTable: "People",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Attendances_People_TaughtBy",
                        column: x => x.TaughtBy,
                        principalTable: "People",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Offers",
                columns: table => new
                {
                    Unit = table.Column<string>(type: "text", nullable: false),
                    Day = table.Column<DateOnly>(type: "date", nullable: false),
                    Place = table.Column<string>(type: "text", nullable: false),
                    From = table.Column<TimeOnly>(type: "time without time zone", nullable: false),
                    TaughtBy = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Offers", x => new { x.Unit, x.Day, x.Place });
                    table.ForeignKey(
                        name: "FK_Offers_People_TaughtBy",
                        column: x => x.TaughtBy,
                        principalTable: "People",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Sittings",
                columns: table => new
                {
                    Person = table.Column<string>(type: "text", nullable: false),
                    Kind = table.Column<string>(type: "text", nullable: false),
                    Form = table.Column<string>(type: "text", nullable: false),
                    Day = table.Column<DateOnly>(type: "date", nullable: false),
                    Right = table.Column<int>(type: "integer", nullable: false),
                    Of = table.Column<int>(type: "integer", nullable: false),
                    Cut = table.Column<double>(type: "double precision", nullable: false),
                    Error = table.Column<double>(type: "double precision", nullable: false),
                    Code = table.Column<string>(type: "text", nullable: false),
                    Position = table.Column<string>(type: "text", nullable: false),
                    Proctor = table.Column<string>(type: "text", nullable: false),
                    TalkedBy = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Sittings", x => new { x.Person, x.Kind, x.Form });
                    table.ForeignKey(
                        name: "FK_Sittings_People_Person",
                        column: x => x.Person,
                        principalTable: "People",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Sittings_People_Proctor",
                        column: x => x.Proctor,
                        principalTable: "People",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Sittings_People_TalkedBy",
                        column: x => x.TalkedBy,
                        principalTable: "People",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Answers_Question",
                table: "Answers",
                column: "Question");

            migrationBuilder.CreateIndex(
                name: "IX_Attendances_TaughtBy",
                table: "Attendances",
                column: "TaughtBy");

            migrationBuilder.CreateIndex(
                name: "IX_Offers_TaughtBy",
                table: "Offers",
                column: "TaughtBy");

            migrationBuilder.CreateIndex(
                name: "IX_Sittings_Proctor",
                table: "Sittings",
                column: "Proctor");

            migrationBuilder.CreateIndex(
                name: "IX_Sittings_TalkedBy",
                table: "Sittings",
                column: "TalkedBy");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Answers");

            migrationBuilder.DropTable(
                name: "Attendances");

            migrationBuilder.DropTable(
                name: "Offers");

            migrationBuilder.DropTable(
                name: "Sittings");
        }
    }
}
