// Finds brackets and quotes that are opened and never closed.

import type { CST } from "yaml";

export interface Unclosed {
  readonly sign: "[" | "{" | '"' | "'";
  /** Where it is opened. */
  readonly from: number;
  /** Where reading it was given up. */
  readonly to: number;
}

type Item = CST.CollectionItem;

/** All unclosed brackets and quotes of the tokens, in the order of the text. */
export function findUnclosed(tokens: readonly CST.Token[]): readonly Unclosed[] {
  const found: Unclosed[] = [];
  const waiting: CST.Token[] = [...tokens];
  while (waiting.length > 0) {
    const token = waiting.pop();
    if (token === undefined) break;
    const unclosed = unclosedToken(token);
    if (unclosed !== null) found.push(unclosed);
    for (const child of childrenOf(token)) waiting.push(child);
  }
  return found.sort((a, b) => a.from - b.from);
}

function childrenOf(token: CST.Token): CST.Token[] {
  const children: CST.Token[] = [];
  if (token.type === "document" && token.value !== undefined) children.push(token.value);
  if (!("items" in token)) return children;
  for (const item of token.items as readonly Item[]) {
    if (item.key !== undefined && item.key !== null) children.push(item.key);
    if (item.value !== undefined) children.push(item.value);
  }
  return children;
}

function unclosedToken(token: CST.Token): Unclosed | null {
  if (token.type === "flow-collection") {
    const sign = token.start.source === "{" ? "{" : "[";
    const closing = sign === "{" ? "flow-map-end" : "flow-seq-end";
    if (token.end.some((end) => end.type === closing)) return null;
    return { sign, from: token.offset, to: endOf(token) };
  }
  if (token.type !== "single-quoted-scalar" && token.type !== "double-quoted-scalar") return null;
  const sign = token.type === "single-quoted-scalar" ? "'" : '"';
  if (token.source.length > 1 && token.source.endsWith(sign)) return null;
  return { sign, from: token.offset, to: token.offset + token.source.length };
}

/** Offset behind the last thing that a bracket swallowed. */
function endOf(token: CST.FlowCollection): number {
  const last = token.items.at(-1);
  const inner = last?.value ?? last?.key;
  const end = token.end.at(-1);
  if (end !== undefined) return end.offset + end.source.length;
  if (inner === undefined || inner === null) return token.offset + 1;
  if (inner.type === "flow-collection") return endOf(inner);
  return inner.offset + ("source" in inner ? inner.source.length : 1);
}
