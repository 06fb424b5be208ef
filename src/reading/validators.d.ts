// The schema checks, as `tests/house/compile-validators.ts` compiles them: one for each file at the top of `schemas/`.

import type { Validator } from "./validate.ts";

export declare const plan: Validator;
export declare const part: Validator;
export declare const report: Validator;
export declare const card: Validator;
export declare const cases: Validator;
