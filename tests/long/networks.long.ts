import { agreesWithSciPy } from "../adjustment/networks-500.ts";

agreesWithSciPy(1);
