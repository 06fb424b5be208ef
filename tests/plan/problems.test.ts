// One thing wrong at a time: what is said of it, and that the rest is resolved all the same.

import { describe, expect, it } from "vitest";
import type { ProblemCode } from "../../src/model/problem.ts";
import { featureOf, resolveText } from "./resolved.ts";

/** A plan with one bad part (`%`), and a thing that must stand whatever the part is. */
const around = (part: string) => `${part}\nobstacles:\n  witness: {at: [1, 1], height: 2}\n`;
const stations = (more: string) =>
  `survey:\n  stations:\n    P1: {at: [0, 0]}\n    P2: {line_to: P1, tape: 30}\n${more}`;

interface Bad {
  readonly what: string;
  readonly text: string;
  readonly code: ProblemCode;
  readonly words: RegExp;
}

const bad: readonly Bad[] = [
  {
    what: "ties that do not reach",
    text: stations("    P3: {ties: {P1: 10, P2: 12}, side: left of P1 to P2}"),
    code: "cannot-close",
    words: /do not reach each other by 8\.00 m/,
  },
  {
    what: "a tie that is too long",
    text: stations("    P3: {ties: {P1: 50, P2: 12}, side: left of P1 to P2}"),
    code: "cannot-close",
    words: /too long.*by 8\.00 m/,
  },
  {
    what: "two ties without a side",
    text: stations("    P3: {ties: {P1: 20, P2: 20}}"),
    code: "missing-key",
    words: /add side: left of A to B/,
  },
  {
    what: "a side that cannot tell",
    text: stations("    P3: {ties: {P1: 20, P2: 20}, side: left of P3 to P1}"),
    code: "circular",
    words: /hang on each other/,
  },
  {
    what: "pegs that hang on each other",
    text: stations(
      "    P3: {ties: {P1: 20, P4: 9}, side: left of P1 to P2}\n    P4: {ties: {P1: 22, P3: 9}, side: left of P1 to P2}",
    ),
    code: "circular",
    words: /P3, P4 hang on each other/,
  },
  {
    what: "a tie to no peg",
    text: stations("    P3: {ties: {P1: 20, 2: 20}, side: left of P1 to P2}").replace(" 2: 20", ' "2": 20'),
    code: "unknown-name",
    words: /did you mean "P2"/,
  },
  {
    what: "a second first line",
    text: stations("    P3: {line_to: P1, tape: 20}"),
    code: "contradiction",
    words: /one line_to in the plan/,
  },
  {
    what: "a bearing without its north",
    text: stations("    P3: {from: P1, bearing: 40 deg, tape: 20}"),
    code: "unknown-word",
    words: /add grid, magnetic or true/,
  },
  {
    what: "a magnetic bearing without a compass",
    text: stations("    P3: {from: P1, bearing: 40 deg magnetic, tape: 20}"),
    code: "missing-key",
    words: /compass: \{plus_minus/,
  },
  {
    what: "a tape of nothing",
    text: stations("    P3: {from: P1, bearing: 40 deg grid, tape: 0}"),
    code: "out-of-range",
    words: /a length above 0/,
  },
  {
    what: "a square off at a peg that is not on the line",
    text: stations("    P3: {square_off: P1 to P2, at: P9, out: 5, side: left}"),
    code: "unknown-name",
    words: /P1 or P2/,
  },
  {
    what: "a station measured by nothing",
    text: stations("    P3: {note: where is it}"),
    code: "missing-key",
    words: /two tapes will do/,
  },
  {
    what: "a bare number as the name of a peg",
    text: 'survey:\n  stations:\n    "12": {at: [0, 0]}',
    code: "bad-name",
    words: /write P12/,
  },
  {
    what: "a survey without a start",
    text: "survey:\n  stations:\n    P1: {line_to: P2, tape: 3}\n    P2: {ties: {P1: 3, P3: 4}}\n    P3: {ties: {P1: 3, P2: 4}}",
    code: "missing-key",
    words: /at: \[0, 0\]/,
  },
  {
    what: "a name for two things",
    text: "walls:\n  north: {line: [[0, 0], [9, 0]]}\nfences:\n  north: {line: [[0, 2], [9, 2]]}",
    code: "name-taken",
    words: /a wall already/,
  },
  {
    what: "a peg that is also a chamber",
    text: stations("    P3: {along: P1 to P2, run: 3, left: 3}\nchambers:\n  P3: {at: [3, 3]}"),
    code: "name-taken",
    words: /written once, in the thing's own place/,
  },
  {
    what: "a name that nothing has",
    text: "walls:\n  north wall: {line: [[0, 0], [9, 0]]}\nfences:\n  f: {beside: nort wall, left: 1}",
    code: "unknown-name",
    words: /did you mean "north wall"/,
  },
  {
    what: "a name in a property that nothing has",
    text: "surfaces:\n  yard: {outline: [[0, 0], [9, 0], [9, 9]]}\ndrains:\n  d: {line: [[0, 0], [5, -5]], takes: [yrad]}",
    code: "unknown-name",
    words: /did you mean "yard"/,
  },
  {
    what: "a side of no fence",
    text: "animals:\n  goats: {on: left of gost fence, species: goat}\nfences:\n  goat fence: {line: [[0, 0], [9, 0]]}",
    code: "unknown-name",
    words: /did you mean "goat fence"/,
  },
  {
    what: "a corner too many",
    text: "surfaces:\n  yard: {outline: [[0, 0], [9, 0], [9, 9]]}\ndrains:\n  d: {line: [yard corner 4, [20, 20]]}",
    code: "unknown-name",
    words: /a corner from 1 to 3/,
  },
  {
    what: "a line where a point belongs",
    text: "walls:\n  w: {line: [[0, 0], [9, 0]]}\nwater:\n  well: {at: w, kind: well}",
    code: "bad-geometry",
    words: /which is a line/,
  },
  {
    what: "a point where a line belongs",
    text: "trees:\n  ash: {at: [3, 3]}\nfences:\n  f: {beside: ash, left: 1}",
    code: "bad-geometry",
    words: /which is a point/,
  },
  {
    what: "two things that hang on each other",
    text: "fences:\n  a: {beside: b, left: 1}\n  b: {beside: a, left: 1}",
    code: "circular",
    words: /placed by things that are placed by it/,
  },
  {
    what: "an outline that crosses itself",
    text: "buildings:\n  shed: {outline: [[0, 0], [5, 5], [5, 0], [0, 5]]}",
    code: "bad-geometry",
    words: /sides that cross at \[2\.50, 2\.50\]/,
  },
  {
    what: "an outline of two pegs",
    text: "buildings:\n  shed: {outline: [[0, 0], [5, 5]]}",
    code: "bad-geometry",
    words: /three points or more/,
  },
  {
    what: "a line without length",
    text: "walls:\n  w: {line: [[1, 1], [1, 1]]}",
    code: "bad-geometry",
    words: /two points that lie apart/,
  },
  {
    what: "four numbers for a pair",
    text: "trees:\n  ash: {at: [48, 52, 12, 30]}",
    code: "decimal-comma",
    words: /\[48\.52, 12\.30\]/,
  },
  {
    what: "a decimal comma in a text",
    text: 'walls:\n  w: {line: [[0, 0], [9, 0]], height: "1,26"}',
    code: "decimal-comma",
    words: /1\.26/,
  },
  {
    what: "a bore that lost its unit",
    text: "drains:\n  d: {line: [[0, 0], [9, 0]], bore: 100}",
    code: "out-of-range",
    words: /was 100 mm meant\?/,
  },
  {
    what: "a wall as high as a hill",
    text: "walls:\n  w: {line: [[0, 0], [9, 0]], height: 126}",
    code: "out-of-range",
    words: /was 126 cm meant\?|was 126 mm meant\?/,
  },
  {
    what: "a girth in centimetres without its unit",
    text: stations("trees:\n  ash: {at: P1, girth: 220}"),
    code: "out-of-range",
    words: /was 220 cm or 220 mm meant\?/,
  },
  {
    what: "a width below nothing",
    text: "surfaces:\n  s: {centre_line: [[0, 0], [9, 0]], width: -1}",
    code: "out-of-range",
    words: /a length of -1 m: look at it again/,
  },
  {
    what: "a ± below nothing",
    text: 'walls:\n  w: {line: [[0, 0], [9, 0]], height: "1.2 ± -1"}',
    code: "out-of-range",
    words: /write the ± without a minus/,
  },
  {
    what: "a departure until a day that is none",
    text: 'departures:\n  - {rule: fences/too-low, features: [], because: b, agreed_by: the owner, review: "2027-02-30"}',
    code: "bad-date",
    words: /covers nothing/,
  },
  {
    what: "a departure that nobody signs",
    text: 'departures:\n  - {rule: fences/too-low, features: [], because: b, agreed_by: " ", review: "2027-02-20"}',
    code: "missing-key",
    words: /nobody signs/,
  },
  {
    what: "a wrong unit",
    text: "surfaces:\n  s: {outline: [[0, 0], [9, 0], [9, 9]], finished: {fall: 3 m}}",
    code: "wrong-unit",
    words: /not a fall/,
  },
  {
    what: "left and right together",
    text: stations("trees:\n  ash: {at: {run: 3, left: 2, right: 2}}"),
    code: "contradiction",
    words: /keep one of the two/,
  },
  {
    what: "a run without an offset",
    text: stations("trees:\n  ash: {at: {run: 3}}"),
    code: "missing-key",
    words: /left or right/,
  },
  {
    what: "a run without a line",
    text: "trees:\n  ash: {at: {run: 3, left: 2}}",
    code: "missing-key",
    words: /along: P1 to P2/,
  },
  {
    what: "a gate past the end of its fence",
    text: "fences:\n  f: {line: [[0, 0], [9, 0]]}\ngates:\n  g: {on: f, along: 8.5, clear: 1}",
    code: "bad-geometry",
    words: /9\.00 m long/,
  },
  {
    what: "a stage that is not there",
    text: "stages: [now, yard]\ntrees:\n  ash: {at: [3, 3], from: yrad}",
    code: "unknown-name",
    words: /did you mean "yard"/,
  },
  {
    what: "existing and still to be made",
    text: "stages: [now, yard]\ntrees:\n  ash: {at: [3, 3], from: yard, existing: true}",
    code: "contradiction",
    words: /stands already, or it is still to be made/,
  },
  {
    what: "taken away before it is made",
    text: "stages: [now, yard, end]\ntrees:\n  ash: {at: [3, 3], from: end, until: yard}",
    code: "contradiction",
    words: /name a later one/,
  },
  {
    what: "a change of what is not there",
    text: "stages: [now, yard]\nchanges:\n  yard: {walls: {w: {height: 1}}}",
    code: "unknown-name",
    words: /a wall that the plan has/,
  },
  {
    what: "a departure for nothing",
    text: "departures:\n  - {rule: fences/jumped, features: [gaot], because: x, agreed_by: y, review: 2027-01-01}\nfences:\n  goat: {line: [[0, 0], [9, 0]]}",
    code: "unknown-name",
    words: /did you mean "goat"/,
  },
  {
    what: "a level on no feature",
    text: "survey:\n  stations: {P1: {at: [0, 0]}}\n  level_book:\n    - {at: P1, bs: 1, level: 10}\n    - {of: walls march wall, top: true, is: 1}",
    code: "unknown-name",
    words: /kind and name/,
  },
];

describe("one thing wrong", () => {
  for (const { what, text, code, words } of bad) {
    it(what, () => {
      const { plan, problems } = resolveText(around(text));
      const told = problems.filter((one) => one.code === code);
      expect(problems.map((one) => one.code)).toContain(code);
      expect(told.map((one) => `${one.expected} | ${one.got} | ${one.hint}`).join("\n")).toMatch(words);
      expect(problems.length).toBeLessThanOrEqual(2);
      for (const one of problems) expect(one.line).toBeGreaterThan(0);
      expect(featureOf(plan, "witness").shape).not.toBeNull();
    });
  }

  it("says with a lost peg which pegs are left out with it", () => {
    const { problems, plan } = resolveText(
      stations(
        "    P3: {ties: {P1: 10, P2: 12}, side: left of P1 to P2}\n    P4: {along: P1 to P3, run: 3, left: 1}\n    P5: {along: P1 to P2, run: 3, left: 1}",
      ),
    );
    expect(problems.length).toBe(1);
    expect(problems[0]?.hint).toContain("left out with it: P4");
    expect([...plan.pegs.keys()]).toEqual(["P1", "P2", "P5"]);
  });

  it("passes over broken nodes and reads everything else", () => {
    const text = "walls:\n  w: {line: [[0, 0], [9, 0]], height: tall, thickness: 0.6}\n";
    expect(resolveText(text).problems.map((one) => one.line)).toEqual([2]);
  });
});
