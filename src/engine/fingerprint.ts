// A finding's fingerprint: rule, features with roles, limit row and option; never a coordinate or a line number.

import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";

/** Stable over edits of the plan that leave the names alone. 20 hexadecimal digits. */
export function fingerprint(
  rule: string,
  features: readonly { readonly role: string; readonly name: string }[],
  limit: string,
  option: string | null,
): string {
  const parts = [rule, ...features.map(({ role, name }) => `${role}=${name}`), limit, option ?? ""];
  return bytesToHex(sha256(utf8ToBytes(parts.join("\n")))).slice(0, 20);
}
