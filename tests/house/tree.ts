import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("../..", import.meta.url));

/** What is made, not written: the names of `.gitignore`, and the repository's own folder. */
const ignored = readFileSync(`${root}.gitignore`, "utf8").split("\n").map((line) => line.trim().replace(/\/$/, "")).filter((line) => line !== "" && !line.startsWith("#"));
const isMade = (name: string): boolean => name === ".git" || ignored.some((one) => (one.startsWith("*") ? name.endsWith(one.slice(1)) : name === one));

export const topLevel = (): readonly string[] => readdirSync(root).filter((name) => !isMade(name)).sort();

/** Every file under a folder of the repository, by its path from the top. */
export function filesUnder(folder: string): readonly string[] {
  return readdirSync(`${root}${folder}`, { withFileTypes: true }).filter(({ name }) => !isMade(name)).flatMap((one) => {
    const path = `${folder}/${one.name}`;
    return one.isDirectory() ? filesUnder(path) : [path];
  });
}

export const textOf = (path: string): string => readFileSync(`${root}${path}`, "utf8");
export const jsonOf = (path: string): unknown => JSON.parse(textOf(path));

/** What people wrote in a language of programs. */
export const sources = (...folders: readonly string[]): readonly string[] => folders.flatMap(filesUnder).filter((path) => /\.(ts|tsx|mjs)$/.test(path));
