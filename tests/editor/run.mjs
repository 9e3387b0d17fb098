/**
 * The tests in a real VS Code: prints "N passed, N failed" and exits accordingly.
 *
 *     node tests/editor/run.mjs [--all | --longer] [--desktop] [--built] [host] [person] [--only TEXT]
 *
 * With --all the longer ones too, of which a shorter one sees most; with --longer those alone. --only takes names of files of person/, with commas
 * between them, or a part of a test's title.
 * With --built the bundles in dist/ are taken as they are.
 * Without --desktop VS Code runs as a server with its face in a headless browser; with it, a desktop
 * VS Code is downloaded for the extension-host tests (the person's view needs the browser).
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 22 || (major === 22 && minor < 18)) {
    const newer = fileURLToPath(new URL('../../node_modules/.bin/node', import.meta.url));
    if (!existsSync(newer))
        throw new Error(`Node 22.18 or newer is needed, this is ${process.versions.node}: run npm install first.`);
    const self = fileURLToPath(import.meta.url);
    process.exit(spawnSync(newer, [self, ...process.argv.slice(2)], { stdio: 'inherit' }).status ?? 1);
}

const { install } = await import('./install.mjs');
install();
const { runSuites } = await import('./suites.ts');
process.exit(await runSuites(process.argv.slice(2)));
