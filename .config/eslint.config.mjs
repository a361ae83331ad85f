import { readFileSync } from "node:fs";
import js from "@eslint/js";
import next from "@next/eslint-plugin-next";
import hooks from "eslint-plugin-react-hooks";
import { defineConfig, globalIgnores } from "eslint/config";
import tseslint from "typescript-eslint";

const { core } = JSON.parse(readFileSync(new URL("directions.json", import.meta.url), "utf8"));
const basePath = new URL("..", import.meta.url).pathname.replace(/\/$/, "");
const SCRIPTS = ["**/*.ts", "**/*.tsx", "**/*.mjs"];

const member = (object, property, message) => ({ object, property, message });
const syntax = (selector, message) => ({ selector, message });

const NO_DEFAULT = syntax("ExportDefaultDeclaration", "Export by name: a default has another name in every file.");
const CORE_PROPERTIES = [
  member("Date", "now", "The core has no clock: take a Clock."),
  member("Math", "random", "The core is deterministic: take the seeded random of lib/base."),
  member("performance", "now", "The core has no clock: take a Clock."),
  member("Math", "sin", "Sines differ between engines: use sinCos of lib/geometry."),
  member("Math", "cos", "Sines differ between engines: use sinCos of lib/geometry."),
];
const CORE_GLOBALS = ["process", "console", "window", "document", "setTimeout", "setInterval", "fetch", "performance", "Buffer", "crypto"]
  .map((name) => ({ name, message: "The core runs anywhere: it knows neither Node nor the browser." }));
const ENVIRONMENT = member("process", "env", "lib/config alone reads the environment.");

export default defineConfig(
  globalIgnores(["node_modules/", ".next/", ".out/", ".data/", "next-env.d.ts", "**/*.d.ts"], "what is made, not written"),
  { basePath, files: SCRIPTS, extends: [js.configs.recommended, tseslint.configs.strict], linterOptions: { reportUnusedDisableDirectives: "error" } },
  {
    basePath, files: SCRIPTS,
    rules: {
      "@typescript-eslint/consistent-type-definitions": ["error", "type"],
      "@typescript-eslint/consistent-type-imports": ["error", { fixStyle: "separate-type-imports", disallowTypeAnnotations: false }],
      "@typescript-eslint/no-non-null-assertion": "error",
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_", ignoreRestSiblings: true }],
      eqeqeq: ["error", "always", { null: "ignore" }],
      "no-restricted-syntax": ["error", NO_DEFAULT],
      "no-var": "error",
      "prefer-const": "error",
      // TypeScript looks after names that are not there.
      "no-undef": "off",
      // Control characters are what some patterns look for.
      "no-control-regex": "off",
    },
  },
  {
    basePath, files: ["lib/**/*.{ts,mjs}", "components/**/*.{ts,tsx}", "app/**/*.{ts,tsx}"], ignores: ["lib/config/**"],
    rules: { "no-restricted-properties": ["error", ENVIRONMENT], "no-console": "error" },
  },
  {
    basePath, files: Object.keys(core).map((room) => `lib/${room}/**/*.ts`), ignores: ["lib/geometry/point.ts"],
    rules: { "no-restricted-properties": ["error", ENVIRONMENT, ...CORE_PROPERTIES], "no-restricted-globals": ["error", ...CORE_GLOBALS] },
  },
  { basePath, files: ["components/**/*.{ts,tsx}"], rules: { "no-restricted-globals": ["error", "process", "Buffer"] } },
  {
    // Loops over flat lists of numbers, where the loop's own bounds keep every index inside.
    basePath, files: ["lib/engine/seating/{field,pack,ranks}.ts", "lib/engine/stages/lanes.ts", "lib/geometry/region.ts", "tests/**"],
    rules: { "@typescript-eslint/no-non-null-assertion": "off" },
  },
  {
    // Files given wrongly on purpose, and the numbers that RFC 8785 gives as they stand.
    basePath, files: ["tests/**"], rules: { "@typescript-eslint/no-dynamic-delete": "off", "no-loss-of-precision": "off" },
  },
  { basePath, files: ["app/**/*.{ts,tsx}", "components/**/*.{ts,tsx}"], extends: [hooks.configs.flat.recommended, next.configs["core-web-vitals"]],
    // Every page is fetched whole, as it is with scripts off.
    rules: { "@next/next/no-html-link-for-pages": "off" } },
  {
    // Next and the tools look for a default.
    basePath, files: ["app/**/{page,layout,error,not-found,loading}.tsx", "next.config.mjs", ".config/*", "tests/browser/start-demo.ts"],
    rules: { "no-restricted-syntax": "off" },
  },
);
