/** Which tests reach a file, and how many imports lie between. */
import { existsSync, globSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { importsOf, sourceFiles } from '../tests/house/source-files.ts';

const root = fileURLToPath(new URL('..', import.meta.url));

export function isTest(file) {
    return /^tests\/(?!editor\/|speed\/).*\.test\.tsx?$/.test(file);
}

/** Whether the ordinary runs leave it to `npm run long`. */
export function isLong(file) {
    return /\.long\.test\.tsx?$/.test(file);
}

/** How many imports lie between each file and the nearest of those given; a test that only names one is as near as one that imports it. */
export function distancesTo(targets) {
    read ??= readImports();
    const { files, known, importers } = read;
    const distances = new Map(targets.map((file) => [file, 0]));
    for (const target of targets.filter((file) => !known.has(file))) {
        for (const file of files)
            if (isTest(file.path) && file.text.includes(path.posix.basename(target))) distances.set(file.path, 1);
    }
    for (const [file, distance] of distances) {
        for (const next of importers.get(file) ?? []) if (!distances.has(next)) distances.set(next, distance + 1);
    }
    return distances;
}

/** Who imports what, read once. */
let read;

function readImports() {
    const files = sourceFiles('shared', 'language', 'server', 'extension', 'tests');
    const known = new Set(files.map((file) => file.path));
    const importers = new Map();
    for (const file of files) {
        for (const name of importsOf(file)) {
            const to = resolve(name, known);
            importers.set(to, [...(importers.get(to) ?? []), file.path]);
        }
    }
    return { files, known, importers };
}

function resolve(name, known) {
    return [name, `${name}.ts`, `${name}.tsx`, `${name}/index.ts`].find((file) => known.has(file)) ?? name;
}

/** What each file of tests took when it ran last, s. */
export function secondsOf() {
    const seen = new Map();
    for (const file of globSync('node_modules/.vite/vitest/*/results.json', { cwd: root })) {
        const { projects = {} } = JSON.parse(readFileSync(path.join(root, file), 'utf8'));
        for (const { files } of Object.values(projects))
            for (const [test, { duration }] of Object.entries(files)) seen.set(test, duration / 1000);
    }
    return seen;
}

/** Whether a test starts what lies in dist/. */
export function needsBundles(file) {
    return (
        existsSync(path.join(root, file)) &&
        /dist\/|'dist'|temporaryRepository|TemporaryRepository/.test(readFileSync(path.join(root, file), 'utf8'))
    );
}
