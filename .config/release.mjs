/**
 * Makes a version ready to be handed out: the changelog's unreleased part gets number and day, the manifest the number, the package
 * is built, then commit and tag. Nothing is pushed or published.
 *
 *     npm run release -- 0.3.0 [--dry-run]     or patch, minor, major
 *     npm run release -- --notes               what the changelog says of the version in the manifest
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const changelog = path.join(root, 'CHANGELOG.md');

/** The number that follows `current`, or the one that was named. Throws when it is none or not a later one. */
export function nextVersion(current, asked) {
    const parts = current.split('.').map(Number);
    const at = ['major', 'minor', 'patch'].indexOf(asked);
    if (at >= 0) return parts.map((part, i) => (i < at ? part : i === at ? part + 1 : 0)).join('.');
    if (!/^\d+\.\d+\.\d+$/.test(asked ?? ''))
        throw new Error(`"${asked ?? ''}" is not a version such as 0.3.0, patch, minor or major.`);
    const wanted = asked.split('.').map(Number);
    const first = wanted.findIndex((part, i) => part !== parts[i]);
    if (first < 0 || wanted[first] < parts[first]) throw new Error(`${asked} does not come after ${current}.`);
    return asked;
}

/** The text of one version in the changelog, without its heading. Undefined where it has none. */
export function notesOf(text, heading) {
    const lines = text.split('\n');
    const start = lines.findIndex((line) => line === `## ${heading}` || line.startsWith(`## ${heading} `));
    if (start < 0) return undefined;
    const end = lines.findIndex((line, i) => i > start && line.startsWith('## '));
    return lines
        .slice(start + 1, end < 0 ? undefined : end)
        .join('\n')
        .trim();
}

/** The changelog with its unreleased part under `version` and `day` (ISO 8601). Throws when nothing is unreleased. */
export function releaseNotes(text, version, day) {
    if (!notesOf(text, 'Unreleased')) throw new Error('CHANGELOG.md has nothing under "## Unreleased".');
    return text.replace('## Unreleased', `## Unreleased\n\n## ${version} (${day})`);
}

function run(command, args) {
    const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' });
    if (status !== 0) throw new Error(`${command} ${args.join(' ')} ended with ${status}.`);
}

function changedFiles() {
    return spawnSync('git', ['status', '--porcelain'], { cwd: root, encoding: 'utf8' }).stdout.trim();
}

function release(asked, dryRun) {
    const { version: current } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
    const version = nextVersion(current, asked);
    const text = releaseNotes(readFileSync(changelog, 'utf8'), version, new Date().toISOString().slice(0, 10));
    if (dryRun) {
        console.log(`${current} → ${version}\n\n${notesOf(text, version)}`);
        return;
    }
    const changed = changedFiles();
    if (changed !== '') throw new Error(`Commit or put away first:\n${changed}`);
    run('npm', ['version', version, '--no-git-tag-version', '--ignore-scripts']);
    writeFileSync(changelog, text);
    run('npm', ['run', '--silent', 'package']);
    const why =
        'Dates what the changelog says and sets the number, so that the package\nof this version can be built and tried from its tag.';
    run('git', ['commit', '--quiet', '--all', '--message', `build: release ${version}`, '--message', why]);
    run('git', ['tag', '--annotate', `v${version}`, '--message', `Kerfbook ${version}`]);
    console.log(`Tagged v${version}. Try dist/kerfbook.vsix in an editor, then push the commit and the tag.`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
    const [asked, ...rest] = process.argv.slice(2);
    try {
        if (asked === '--notes') {
            const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
            console.log(notesOf(readFileSync(changelog, 'utf8'), version) ?? '');
        } else release(asked, rest.includes('--dry-run'));
    } catch (error) {
        console.error(error.message);
        process.exit(1);
    }
}
