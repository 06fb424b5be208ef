// Turns src/motion/kernel.wat into src/motion/kernel-bytes.ts. Run: npx tsx tests/house/assemble-kernel.ts
// An assembler for the few words of WebAssembly's text form (folded, names for locals and labels) that the kernel uses;
// opcodes from the WebAssembly core specification 2.0, binary format (W3C; MEMORY).

import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

type Form = string | readonly Form[];

const types: Readonly<Record<string, number>> = { i32: 0x7f, f64: 0x7c, v128: 0x7b };

/** Instructions without operands in the code, by opcode; those from 0xfc00 on have a byte before. */
const plain: Readonly<Record<string, number>> = {
  "i32.eqz": 0x45,
  "i32.eq": 0x46,
  "i32.ne": 0x47,
  "i32.lt_s": 0x48,
  "i32.lt_u": 0x49,
  "i32.gt_s": 0x4a,
  "i32.gt_u": 0x4b,
  "i32.le_s": 0x4c,
  "i32.ge_s": 0x4e,
  "i32.ge_u": 0x4f,
  "i32.add": 0x6a,
  "i32.sub": 0x6b,
  "i32.mul": 0x6c,
  "i32.and": 0x71,
  "i32.or": 0x72,
  "i32.xor": 0x73,
  "i32.shl": 0x74,
  "i32.shr_s": 0x75,
  "i32.shr_u": 0x76,
  "f64.ceil": 0x9b,
  "f64.floor": 0x9c,
  "f64.add": 0xa0,
  "i32.trunc_sat_f64_s": 0xfc02,
  select: 0x1b,
  "v128.and": 0xfd4e,
  "v128.andnot": 0xfd4f,
  "v128.or": 0xfd50,
  "v128.any_true": 0xfd53,
  "i32x4.shl": 0xfdab,
  "i32x4.shr_u": 0xfdad,
};

/** Loads and stores: opcode and the usual alignment as a power of two. */
const memory: Readonly<Record<string, readonly [number, number]>> = {
  "i32.load": [0x28, 2],
  "i32.store": [0x36, 2],
  "f64.load": [0x2b, 3],
  "v128.load": [0xfd00, 4],
  "v128.store": [0xfd0b, 4],
};

const locals: Readonly<Record<string, number>> = { "local.get": 0x20, "local.set": 0x21, "local.tee": 0x22 };
const branches: Readonly<Record<string, number>> = { br: 0x0c, br_if: 0x0d };
const blocks: Readonly<Record<string, number>> = { block: 0x02, loop: 0x03 };

/** Bytes of the module that a text describes. */
export function assemble(text: string): Uint8Array {
  const [module] = read(text.replace(/;;[^\n]*/g, "").match(/[()]|"[^"]*"|[^\s()"]+/g) ?? []);
  const parts = (module as readonly Form[]).slice(1) as readonly (readonly Form[])[];
  const functions = parts.filter(([head]) => head === "func");
  const [, from, name, [, pages]] = parts.find(([head]) => head === "import") as unknown as [
    string,
    string,
    string,
    [string, string],
  ];
  const every = functions.map((_, i) => i);
  const sections: readonly (readonly [number, readonly number[]])[] = [
    // One type: no parameters, no results.
    [1, [1, 0x60, 0, 0]],
    [2, [1, ...named(from), ...named(name), 0x02, 0x00, ...unsigned(Number(pages))]],
    [3, counted(every.map(() => [0]))],
    [7, counted(functions.map((one, i) => [...named((one[1] as readonly string[])[1]!), 0x00, i]))],
    [10, counted(functions.map((one) => sized(body(one.slice(2)))))],
  ];
  return Uint8Array.from([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0, ...sections.flatMap(([id, part]) => [id, ...sized(part)])]);
}

function read(words: readonly string[]): readonly Form[] {
  const open: Form[][] = [[]];
  for (const word of words) {
    if (word === "(") open.push([]);
    else if (word === ")") {
      const done = open.pop()!;
      open.at(-1)!.push(done);
    } else open.at(-1)!.push(word.startsWith('"') ? word.slice(1, -1) : word);
  }
  return open[0]!;
}

function body(forms: readonly Form[]): number[] {
  const declared = forms.filter((form) => form[0] === "local") as readonly (readonly string[])[];
  const names = declared.map(([, name]) => name!);
  const code = forms.filter((form) => form[0] !== "local").flatMap((form) => emit(form, names, []));
  return [...counted(declared.map(([, , type]) => [1, types[type!]!])), ...code, 0x0b];
}

function emit(form: Form, names: readonly string[], labels: readonly string[]): number[] {
  const [head, ...rest] = form as readonly Form[];
  const op = head as string;
  const inner = (forms: readonly Form[], within = labels) => forms.flatMap((one) => emit(one, names, within));
  const operands = rest.filter((one) => typeof one !== "string");
  const words = rest.filter((one) => typeof one === "string");
  if (op in plain) return [...inner(operands), ...opcode(plain[op]!)];
  if (op in locals) return [...inner(operands), locals[op]!, ...unsigned(indexIn(names, words[0]!))];
  if (op in memory) return [...inner(operands), ...opcode(memory[op]![0]), ...place(words, memory[op]![1])];
  if (op in branches) return [...inner(operands), branches[op]!, ...unsigned(indexIn(labels, words[0]!))];
  if (op in blocks) return [blocks[op]!, 0x40, ...inner(operands, [words[0]!, ...labels]), 0x0b];
  if (op === "i32.const") return [0x41, ...signed(Number(words[0]))];
  if (op === "i32x4.extract_lane") return [...inner(operands), ...opcode(0xfd1b), Number(words[0])];
  if (op === "if") {
    const [condition, then] = operands as [Form, readonly Form[]];
    return [...inner([condition]), 0x04, 0x40, ...inner(then.slice(1), ["", ...labels]), 0x0b];
  }
  throw new Error(`the assembler does not know ${op}`);
}

function indexIn(names: readonly string[], name: string): number {
  const index = names.indexOf(name);
  if (index < 0) throw new Error(`the assembler finds no ${name}`);
  return index;
}

/** Alignment and offset of a load or store. */
function place(words: readonly string[], usual: number): number[] {
  const value = (key: string) => words.find((word) => word.startsWith(key))?.slice(key.length);
  const align = value("align=");
  return [align === undefined ? usual : Math.log2(Number(align)), ...unsigned(Number(value("offset=") ?? 0))];
}

function opcode(code: number): number[] {
  return code < 0xfc00 ? [code] : [code >> 8, ...unsigned(code & 0xff)];
}

function counted(parts: readonly (readonly number[])[]): number[] {
  return [...unsigned(parts.length), ...parts.flat()];
}

function sized(bytes: readonly number[]): number[] {
  return [...unsigned(bytes.length), ...bytes];
}

function named(name: string): number[] {
  return sized([...new TextEncoder().encode(name)]);
}

/** A number in groups of seven bits, lowest first. */
function unsigned(value: number): number[] {
  return value < 128 ? [value] : [(value & 127) | 128, ...unsigned(value >>> 7)];
}

function signed(value: number): number[] {
  const low = value & 127;
  const rest = value >> 7;
  const done = (rest === 0 && (low & 64) === 0) || (rest === -1 && (low & 64) !== 0);
  return done ? [low] : [low | 128, ...signed(rest)];
}

/** The file that holds the bytes. */
export function bytesFile(bytes: Uint8Array): string {
  const text = Buffer.from(bytes).toString("base64");
  const lines = text.match(/.{1,100}/g) ?? [];
  return [
    "// Made by tests/house/assemble-kernel.ts from kernel.wat; do not edit.",
    "",
    "/** The loops of kernel.wat as machine code, base64. */",
    "export const kernelBytes =",
    `${lines.map((line) => `  "${line}"`).join(" +\n")};`,
    "",
  ].join("\n");
}

const here = new URL("../../src/motion/", import.meta.url);

/** What kernel-bytes.ts ought to hold. */
export function assembledKernel(): string {
  return bytesFile(assemble(readFileSync(new URL("kernel.wat", here), "utf8")));
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  writeFileSync(new URL("kernel-bytes.ts", here), assembledKernel());
