// The command line: arguments and streams in, exit number out. Sets nothing of the process itself.

import { Command, CommanderError, Option } from "commander";
import type { CheckFlags } from "./check-command.ts";
import type { ReasonFlags } from "./reason-command.ts";
import type { RoomFlags } from "./room-command.ts";
import type { SheetFlags, SheetName } from "./sheet-command.ts";
import type { Streams } from "./streams.ts";
import { version } from "./version.ts";

const collect = (value: string, before: readonly string[]): readonly string[] => [...before, value];

/** Runs the command line; a command is loaded when it is asked for. 0 nothing fails, 1 something fails, 2 could not be read, 3 a fault of ours. */
export async function main(args: readonly string[], streams: Streams): Promise<number> {
  let exit = 0;
  const program = programWith(streams, (code) => (exit = code));
  try {
    await program.parseAsync([...args], { from: "user" });
    return exit;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    streams.err(
      `This is a fault of ours, not of your plan: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`,
    );
    return 3;
  }
}

const checkHelp = `
For instance: sightrail check yard.yaml --save yard.html

Ends with 0 where nothing fails, 1 where something does or can hurt somebody and is not shown to be met,
2 where something could not be read, 3 for a fault of ours.`;

function programWith(streams: Streams, finish: (code: number) => void): Command {
  const program = new Command("sightrail");
  program
    .description(
      "Checks the plan of a rural plot before a spade goes in: what will not do, by how much, who says so, what to do.",
    )
    .addHelpText("after", "\nBegin with: sightrail check yard.yaml")
    .showHelpAfterError("The commands and what they take: sightrail --help")
    .version(version, "--version", "print the version")
    .exitOverride();
  program.configureOutput({
    writeOut: streams.out,
    writeErr: streams.err,
    outputError: (text, write) => write(text.replace(/^error: /, "").replace(/^./, (first) => first.toUpperCase())),
  });
  program
    .command("check")
    .description("check one or more plans and print the report")
    .argument("<plan...>", "plan files, as yard.yaml; - is standard input")
    .option(
      "--save <file>",
      "also write the report; .txt .html .svg .json .sarif .geojson by its ending (repeatable)",
      collect,
      [],
    )
    .option("--rules <folder>", "add your own cards from a folder")
    .option("--place <list>", "places whose rules apply, in place of the plan's own, by commas")
    .option("--stage <name>", "check one stage only")
    .option("--option <name>", "check the plan with one of its options")
    .option("--as-of <date>", "day against which dates are judged, as 2026-11-25")
    .option("--remedies", "search, too, for the least change that lets each vehicle through (takes seconds)")
    .option("--no-remedies", "do not work out what would put each thing right")
    .option("--all", "list what is met, too")
    .option("--plain", "no mark lines, for a screen reader")
    .option("--brief", "first lines only; cautions stay")
    .addOption(new Option("--width <columns>", "columns of the printed report").argParser(Number))
    .addHelpText("after", checkHelp)
    .action(async (plans: string[], flags: CheckFlags) => {
      const { checkCommand } = await import("./check-command.ts");
      finish(await checkCommand(plans, flags, streams));
    });
  program
    .command("reason")
    .description("say why: the rule behind a finding, with its limits and who publishes them")
    .argument("<which>", "number of a finding in the report, or a rule, as fences/jumped-in-from-stand")
    .argument("[plan...]", "with a number: the plan files of that report")
    .option("--rules <folder>", "add your own cards from a folder")
    .option("--place <list>", "with a number: as the report was asked for")
    .option("--stage <name>", "with a number: as the report was asked for")
    .option("--option <name>", "with a number: as the report was asked for")
    .option("--as-of <date>", "with a number: as the report was asked for")
    .addHelpText("after", "\nFor instance: sightrail reason 3 yard.yaml")
    .action(async (which: string, plans: string[], flags: ReasonFlags) => {
      const { reasonCommand } = await import("./reason-command.ts");
      finish(reasonCommand(which, plans, { ...flags, streams }));
    });
  program
    .command("rules")
    .description("list the rules")
    .option("--rules <folder>", "add your own cards from a folder")
    .action(async (flags: { rules?: string }) => {
      const { rulesCommand } = await import("./rules-command.ts");
      finish(rulesCommand(flags, streams));
    });
  addSheet(program, "remeasure", {
    what: "list what to measure again or for the first time, worst first",
    streams,
    finish,
  });
  addSheet(program, "ground", {
    what: "print how the ground lies: the way of the water, cut and fill, sections",
    streams,
    finish,
  });
  addSheet(program, "setout", { what: "print the sheet to peg the plan from", streams, finish });
  addRoom(program, streams, finish);
  return program;
}

function addSheet(
  program: Command,
  sheet: SheetName,
  how: { readonly what: string; readonly streams: Streams; readonly finish: (code: number) => void },
): void {
  program
    .command(sheet)
    .description(how.what)
    .argument("<plan>", "plan file; - is standard input")
    .option("--save <file>", "also write the sheet; .txt or .csv by its ending (repeatable)", collect, [])
    .option("--rules <folder>", "add your own cards from a folder")
    .option("--place <list>", "places whose rules apply, in place of the plan's own, by commas")
    .option("--stage <name>", "look at one stage only")
    .option("--option <name>", "take the plan with one of its options")
    .option("--as-of <date>", "day against which dates are judged, as 2026-11-25")
    .action(async (plan: string, flags: SheetFlags) => {
      const { sheetCommand } = await import("./sheet-command.ts");
      how.finish(sheetCommand(sheet, plan, { ...flags, streams: how.streams }));
    });
}

function addRoom(program: Command, streams: Streams, finish: (code: number) => void): void {
  program
    .command("room")
    .description("tell how much ground a vehicle takes to turn round, with what to peg and a drawing")
    .argument("[vehicle...]", "vehicles of the library, as pickup or 'aashto p', or of --plan; several for one ground")
    .option("--plan <file>", "take the vehicles of a plan")
    .option("--option <name>", "take the plan with one of its options")
    .option(
      "--shape <word>",
      "rectangle, t (its bar as deep as the track is wide), y, loop (round without reversing), road, or gate (off a lane)",
      "rectangle",
    )
    .option(
      "--entry <word>",
      "where the track meets a rectangle: middle or end of the long side, short-side, along",
      "middle",
    )
    .option(
      "--walls <word>",
      "which edges stand as high as mirrors hang (a wall, a hedge, a fence): none, ground (not its track's), all",
      "none",
    )
    .option("--moves <number>", "moves allowed; a three-point turn is 3", "3")
    .option("--clear <length>", "clear all round the body; else what is usual for its width")
    .option("--track <length>", "width of the track that leads in; else what is usual")
    .option("--splay <length>", "how far the corners of the mouth are cut off")
    .option("--length <length>", "length of the ground; the depth is looked for")
    .option("--depth <length>", "depth of the ground; the length is looked for; with both, the clearance")
    .option("--lane <length>", "width of the lane that a gate opens off")
    .option("--set-back <length>", "how far back from the lane the gate stands, besides those told anyway")
    .option("--trailer <name>", "with this trailer on: of the library, as 'plant trailer', or of --plan")
    .option("--hitch <length>", "rear axle back to the hitch")
    .option("--vehicle-length <length>", "your own vehicle: whole length")
    .option("--vehicle-width <length>", "width without mirrors")
    .option("--wheelbase <length>", "front axle to rear axle")
    .option("--front-overhang <length>", "front axle to front end")
    .option("--rear-overhang <length>", "rear axle to rear end")
    .option("--over-tyres <length>", "front wheels, outside to outside")
    .option("--turning-circle <length>", "across the circle that it turns in, a diameter")
    .option("--between <word>", "what the circle was measured between: kerbs or walls", "kerbs")
    .option("--save <file>", "also write it; .txt .csv .svg .html .json by its ending (repeatable)", collect, [])
    .action(async (vehicles: string[], flags: RoomFlags) => {
      const { roomCommand } = await import("./room-command.ts");
      finish(await roomCommand(vehicles, flags, streams));
    });
}
