import { expect, it } from 'vitest';
import { sourceFiles } from './source-files';

it('only one file of the command line writes to a terminal, so that nothing reaches it raw', () => {
    const files = sourceFiles('server').filter(({ path }) => path.startsWith('server/cli/') && path !== 'server/cli/say.ts');
    expect(files.length).toBeGreaterThan(10);
    const raw = files.filter(({ text }) => /process\.(?:stdout|stderr)\.write|console\.\w/.test(text));
    expect(raw.map(({ path }) => path)).toEqual([]);
});

it('only one file of the server writes to a disk', () => {
    const writes = /\b(?:writeFile|appendFile|createWriteStream|copyFile)\b/;
    const files = sourceFiles('server').filter(({ text }) => writes.test(text));
    expect(files.map(({ path }) => path)).toEqual(['server/writing/disk-store.ts']);
});
