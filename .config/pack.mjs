/**
 * `npm run pack`: the command line as a package of its own, dist/kerfbook-VERSION.tgz, for a shop's repository or a build server:
 * `npm install ./kerfbook-VERSION.tgz`. All that it needs is bundled, so that nothing else is installed with it.
 */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const stage = path.join(root, 'out', 'npm');
const carried = ['README.md', 'LICENSE', 'CHANGELOG.md', 'samples', 'extension/docs'];
const built = ['dist/cli.cjs', 'dist/cli', 'dist/worker.cjs', 'dist/schemas', 'dist/third-party-notices.txt'];

execFileSync(process.execPath, [path.join(root, '.config/build.mjs'), '--production'], { stdio: 'inherit' });
rmSync(stage, { recursive: true, force: true });
mkdirSync(stage, { recursive: true });
for (const name of [...carried, ...built]) cpSync(path.join(root, name), path.join(stage, name), { recursive: true });
const read = (file) => JSON.parse(readFileSync(path.join(root, file), 'utf8'));
const { name, version, license, bin, engines } = read('package.json');
const { description } = read('extension/l10n/package.nls.json');
const trimmed = { name, version, description, license, bin, engines: { node: engines.node } };
writeFileSync(path.join(stage, 'package.json'), `${JSON.stringify(trimmed, null, 2)}\n`);
execFileSync('npm', ['pack', '--silent', '--pack-destination', path.join(root, 'dist')], { cwd: stage, stdio: 'inherit' });
