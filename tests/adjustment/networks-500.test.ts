import { agreesWithSciPy } from "./networks-500.ts";

// All 500 take half a minute: `npm run long`.
agreesWithSciPy(10);
