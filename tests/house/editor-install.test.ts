import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { root } from './source-files';

const script = pathToFileURL(path.join(root, 'tests/editor/install.mjs'));
const beside = pathToFileURL(path.join(root, '.config/install-beside.mjs')).href;

describe('the install of the editor that the tests run in', () => {
    let folder: string;

    beforeEach(() => {
        folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-install-'));
    });
    afterEach(() => rmSync(folder, { recursive: true, force: true }));

    /** What is said when the install runs inside of another npm, with this in the place of npm. */
    function installWith(npm: string) {
        const program = path.join(folder, 'npm');
        writeFileSync(program, `#!/bin/sh\n${npm}\n`);
        chmodSync(program, 0o755);
        const outer = {
            npm_config_user_agent: 'npm/10.8.2 node/v20.20.2 linux x64',
            npm_config_loglevel: 'silent',
            npm_lifecycle_event: 'test',
        };
        const env = { ...process.env, ...outer, PATH: `${folder}${path.delimiter}${process.env.PATH}` };
        const code = `import('${script}').then(({ installPackages }) => installPackages(${JSON.stringify(folder)}))`;
        return spawnSync(process.execPath, ['-e', code], { env, encoding: 'utf8' });
    }

    it('tells npm nothing of an npm around it', () => {
        const { stdout, status } = installWith('[ "$1" = config ] || env | cut -d= -f1');
        expect(status).toBe(0);
        expect(stdout.split('\n').filter((name) => name.startsWith('npm_'))).toEqual([]);
        expect(stdout).toContain('PATH');
    });

    it('keeps to the settings of the machine’s own npm', () => {
        const { stdout } = installWith('[ "$1" = config ] && echo /etc/its-npmrc || echo "$@"');
        expect(stdout).toMatch(/^ci .*--globalconfig=\/etc\/its-npmrc$/m);
    });

    it('shows in npm’s own words why it failed', () => {
        const { stderr, status } = installWith('[ "$1" = config ] || { echo "npm error it wants another Node" >&2; exit 3; }');
        expect(status).not.toBe(0);
        expect(stderr).toContain('npm error it wants another Node');
        expect(stderr).toContain('npm failed (exit code 3)');
    });

    it('goes on beside the tests, and what it said is there when it has failed', async () => {
        const { installBeside } = (await import(beside)) as {
            installBeside(script: string): Promise<{ said: string; status: number }>;
        };
        const said = vi.spyOn(console, 'log').mockImplementation(() => {});
        const script = path.join(folder, 'install.mjs');
        writeFileSync(
            script,
            "console.log('Installing …');\nconsole.error('npm error it wants another Node');\nprocess.exit(3);\n",
        );
        const failed = await installBeside(script);
        expect(failed.status).toBe(3);
        expect(failed.said).toContain('npm error it wants another Node');
        expect(said.mock.calls.flat().join()).toContain('Installing …');
        said.mockClear();
        writeFileSync(script, '');
        expect(await installBeside(script)).toEqual({ said: '', status: 0 });
        expect(said).not.toHaveBeenCalled();
        said.mockRestore();
    });
});
