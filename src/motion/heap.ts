// The array that a search works in: free poses, what each side has reached, and the log, one after the other. A search
// borrows one and gives it back, so that the next does not have to ask for memory again.

import { kernelBytes } from "./kernel-bytes.ts";
import { numberRegisters, registers, scriptKernel } from "./kernel.ts";
import type { Kernel } from "./kernel.ts";

/** One array with the loops that work on it. */
export interface Heap {
  /** Replaced when the heap grows: never keep it beyond that. */
  words: Int32Array;
  /** The number registers, over the bottom of the words; replaced with them. */
  numbers: Float64Array;
  readonly kernel: Kernel;
  /** Makes room for so many words in all; what is there stays. */
  readonly growTo: (words: number) => void;
}

/** Which loops a heap is worked by: machine code where it can be had, or plain script. */
export type KernelKind = "machine" | "script";

/** Heaps at rest. Large ones are not kept. */
const resting: Heap[] = [];
const mostResting = 3;
const largestResting = 16e6;

/** A heap of at least so many words beyond the registers. What is in it is whatever was left there. */
export function borrowHeap(words: number): Heap {
  const heap = resting.pop() ?? newHeap(words + registers, "machine");
  heap.growTo(words + registers);
  return heap;
}

/** Gives a heap back. It must not be used any more. */
export function giveBack(heap: Heap): void {
  if (resting.length < mostResting && heap.words.length <= largestResting) resting.push(heap);
}

/** A new heap; worked by script where this machine has no wide words. */
export function newHeap(words: number, kind: KernelKind): Heap {
  return (kind === "machine" ? machineHeap(words) : null) ?? scriptHeap(words);
}

function scriptHeap(words: number): Heap {
  const first = new Int32Array(words + (words & 1));
  const heap = { words: first, numbers: numbersOver(first.buffer) };
  const growTo = (more: number): void => {
    if (more <= heap.words.length) return;
    const larger = new Int32Array(Math.max(more, heap.words.length + (heap.words.length >> 1)));
    larger.set(heap.words);
    heap.words = larger;
    heap.numbers = numbersOver(larger.buffer);
  };
  return Object.assign(heap, { kernel: scriptKernel(heap), growTo });
}

/** The part of WebAssembly that is used; a machine may be without. */
interface MachineCode {
  readonly validate: (bytes: Uint8Array) => boolean;
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Memory: new (size: { initial: number }) => Memory;
  readonly Instance: new (code: object, given: { heap: { memory: Memory } }) => { readonly exports: unknown };
}

interface Memory {
  readonly buffer: ArrayBuffer;
  readonly grow: (pages: number) => number;
}

const machine = (globalThis as { readonly WebAssembly?: MachineCode }).WebAssembly;

const wordsPerPage = 65536 / 4;

/** The machine code, checked and made once; null where the machine has no words of 128 bits. */
let compiled: object | null | undefined;

function machineCode(): object | null {
  if (compiled !== undefined) return compiled;
  const bytes = Uint8Array.from(atob(kernelBytes), (letter) => letter.charCodeAt(0));
  compiled = machine?.validate(bytes) === true ? new machine.Module(bytes) : null;
  return compiled;
}

function machineHeap(words: number): Heap | null {
  const code = machineCode();
  if (machine === undefined || code === null) return null;
  const memory = new machine.Memory({ initial: pagesFor(words) });
  const kernel = new machine.Instance(code, { heap: { memory } }).exports as Kernel;
  const growTo = (more: number): void => {
    const lacking = pagesFor(more) - pagesFor(heap.words.length);
    if (lacking <= 0) return;
    memory.grow(Math.max(lacking, pagesFor(heap.words.length) >> 1));
    heap.words = new Int32Array(memory.buffer);
    heap.numbers = numbersOver(memory.buffer);
  };
  const heap: Heap = {
    words: new Int32Array(memory.buffer),
    numbers: numbersOver(memory.buffer),
    kernel,
    growTo,
  };
  return heap;
}

function numbersOver(buffer: ArrayBuffer): Float64Array {
  return new Float64Array(buffer, 0, numberRegisters);
}

function pagesFor(words: number): number {
  return Math.ceil(words / wordsPerPage);
}
