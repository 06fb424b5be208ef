// Reads one number of the plan, with its unit and its ±, and says what is wrong where it cannot be read.

import type { Dimension } from "../model/quantity.ts";
import { parseQuantity, writtenLike } from "../model/units.ts";
import type { Node } from "./node.ts";
import { wordsOf, type Troubles } from "./troubles.ts";

/** A number as written: value in base units and the 95 % half-width where one is given. */
export interface Written {
  readonly value: number;
  readonly plusMinus: number | null;
  readonly node: Node;
  /** True for a tape that was brought level by the slope or rise beside it. */
  readonly reduced?: boolean;
}

/** Reads a node as a number of some dimension; a problem and null where it is none. */
export function readNumber(node: Node | null, dimension: Dimension, troubles: Troubles): Written | null {
  return node === null ? null : readNumberText(node, node.data, { dimension, troubles });
}

/** Reads part of a node's text as a number (`99.60` of `99.60 at corner 1`). */
export function readNumberText(
  node: Node,
  data: unknown,
  { dimension, troubles }: { readonly dimension: Dimension; readonly troubles: Troubles },
): Written | null {
  const parsed = parseQuantity(data, dimension);
  if (parsed.ok) {
    if (Number.isFinite(parsed.value)) return { value: parsed.value, plusMinus: parsed.plusMinus, node };
    return troubles.report(node, {
      code: "not-a-number",
      expected: writtenLike[dimension],
      got: wordsOf(data),
      hint: "write a finite number",
    });
  }
  return troubles.report(node, { code: parsed.code, expected: parsed.expected, got: wordsOf(data), hint: parsed.hint });
}
