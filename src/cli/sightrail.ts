// The program itself: hands the process's arguments and streams to `main` and exits with its number.

import { readStandardInput } from "./files.ts";
import { main } from "./main.ts";

const day = (date: Date): string =>
  `${date.getFullYear()}-${String(date.getMonth() + 1).padStart(2, "0")}-${String(date.getDate()).padStart(2, "0")}`;

// A reader that closes early (`| head`) is no fault of ours; what was found still decides the exit number.
process.stdout.on("error", () => undefined);
void main(process.argv.slice(2), {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  readInput: readStandardInput,
  today: day(new Date()),
  columns: process.stdout.columns,
  colour: process.stdout.isTTY && process.env["NO_COLOR"] === undefined,
}).then((exit) => {
  process.exitCode = exit;
  // Once all is written there is no need to take the heap down piece by piece.
  process.stdout.write("", () => process.exit());
});
