import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const page = readFileSync(path.join(root, 'extension/docs/editors.md'), 'utf8');
const hasNeovim = spawnSync('nvim', ['--version']).status === 0;
const folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-neovim-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Waits for findings, asks for hover on the word `laser`, lays the file out, and says what came. */
const looking = `
vim.wait(60000, function() return #vim.diagnostic.get(0) > 6 end, 50)
local lines = { tostring(#vim.diagnostic.get(0)), vim.diagnostic.get(0)[1].message }
local at = vim.fn.search('^  laser', 'n')
local asked = { textDocument = vim.lsp.util.make_text_document_params(), position = { line = at - 1, character = 3 } }
local hovered = vim.lsp.buf_request_sync(0, 'textDocument/hover', asked, 20000)
local _, hover = next(hovered or {})
table.insert(lines, vim.inspect(hover and hover.result and hover.result.contents or 'nothing'))
vim.api.nvim_buf_set_lines(0, at - 1, at, false, { 'laser      shed' })
vim.lsp.buf.formatting_sync(nil, 20000)
table.insert(lines, vim.fn.getline(vim.fn.search('laser  *shed', 'nw')))
vim.fn.writefile(vim.split(table.concat(lines, '\\n'), '\\n'), os.getenv('SAID'))
vim.cmd('qa!')
`.replaceAll('\\\\n', '\\n');

/** Gives the command of the page and waits for what it writes. */
const building = `
vim.wait(60000, function() return #vim.lsp.buf_get_clients(0) > 0 and vim.lsp.buf_get_clients(0)[1].initialized end, 50)
vim.cmd('Build')
vim.wait(60000, function() return vim.fn.filereadable('made/tide-coaster/job-sheet.html') == 1 end, 50)
vim.fn.writefile({ vim.inspect(vim.lsp.buf_get_clients(0)[1].server_capabilities.executeCommandProvider) }, os.getenv('SAID'))
vim.cmd('qa!')
`;

const setUp = /```lua\n(-- Neovim 0\.7[\s\S]*?)```/.exec(page)![1]!;
const command = /```lua\n(-- The files of the recipe[\s\S]*?)```/.exec(page)![1]!;
const shop = path.join(folder, 'shop');

/** What Neovim writes down by a script, started with an `init.lua` on a file of the samples. */
function said(init: string, file: string, script: string): { lines: string[]; stderr: string } {
    writeFileSync(path.join(folder, 'init.lua'), init);
    writeFileSync(path.join(folder, 'look.lua'), script);
    const out = path.join(folder, 'said.txt');
    const args = [
        '--headless',
        '--clean',
        '-u',
        path.join(folder, 'init.lua'),
        file,
        '-c',
        `luafile ${path.join(folder, 'look.lua')}`,
    ];
    const { stderr } = spawnSync('nvim', args, {
        cwd: shop,
        env: { ...process.env, HOME: folder, SAID: out, PATH: `${path.join(folder, 'bin')}${path.delimiter}${process.env.PATH}` },
        timeout: 100_000,
        encoding: 'utf8',
    });
    return { lines: readFileSync(out, 'utf8').split('\n'), stderr };
}

// Debian has 0.7; where there is none, nothing is said of it.
describe.runIf(hasNeovim)('Neovim, set up as the page says', () => {
    beforeAll(() => {
        cpSync(path.join(root, 'samples'), shop, { recursive: true });
        const bin = path.join(folder, 'bin');
        mkdirSync(bin);
        writeFileSync(path.join(bin, 'kerfbook'), `#!/bin/sh\nexec "${process.execPath}" "${root}/dist/cli.cjs" "$@"\n`);
        chmodSync(path.join(bin, 'kerfbook'), 0o755);
    });

    it('shows findings and hovers, and lays out', () => {
        const { lines, stderr } = said(setUp, 'heron-tray-faulty.kerf', looking);
        expect(Number(lines[0]), stderr).toBeGreaterThan(6);
        expect(lines.join('\n')).toContain('The laser it is burnt on.');
        expect(lines.at(-2)).toBe('  laser shed');
    }, 120_000);

    it('writes files by the command of the page', () => {
        const { lines, stderr } = said(`${setUp}\n${command}`, 'tide-coaster.kerf', building);
        expect(lines.join('\n'), stderr).toContain('kerfbook.build');
        expect(readdirSync(path.join(shop, 'made/tide-coaster'))).toContain('job-sheet.html');
    }, 120_000);
});
