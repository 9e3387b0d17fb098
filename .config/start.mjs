/**
 * `npm start`: builds everything, then takes the sample workshop the whole way: checks the good
 * recipes, shows what is noticed in the faulty one, writes the files for machine and bench.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const out = path.join(root, 'out', 'samples');
const good = ['gate-sign', 'tide-coaster', 'heron-tray'].map((name) => `samples/${name}.kerf`);

function run(title, args, expected = 0) {
    console.log(`\n== ${title}`);
    const { status } = spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit' });
    if (status !== expected) {
        console.error(`\nThat ended with ${status} instead of ${expected}.`);
        process.exit(1);
    }
}

run('Building', ['.config/build.mjs']);
run('The good recipes', ['dist/cli.cjs', 'check', ...good]);
run('A faulty copy of the heron tray: what would have ruined it', ['dist/cli.cjs', 'check', 'samples/heron-tray-faulty.kerf'], 1);
run('Files for the machine and the bench', ['dist/cli.cjs', 'build', ...good, '--out', out]);

const sheet = path.join(out, 'heron-tray', 'job-sheet.html');
if (!existsSync(sheet)) {
    console.error(`There is no ${sheet}.`);
    process.exit(1);
}
console.log(`
The results lie in ${out}
  the heron tray's job sheet:   ${sheet}
  the real-size drawings:       ${path.join(out, 'heron-tray', 'setup-*.svg')}
To see it in the editor: open this folder in VS Code, press F5, open samples/heron-tray.kerf
and run the command "Kerfbook: Open Bench View to the Side".`);
