import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import {
    type CodeLens,
    LSPErrorCodes,
    type PublishDiagnosticsParams,
    type ShowDocumentParams,
    type ShowMessageParams,
} from 'vscode-languageserver';
import { dayOf } from '../../shared/quantity/calendar';
import { requests } from '../../shared/view/requests';
import { LanguageClient } from '../kit/language-client';
import { WireServer } from '../kit/wire-server';

const top = mkdtempSync(path.join(tmpdir(), 'kerfbook-commands-'));
const folder = path.join(top, 'shop');
const uriOf = (name: string) => pathToFileURL(path.join(folder, name)).toString();
const workshop = `laser shed { beam co2  power 45 W  spot 0.15 mm  field 600 x 400 mm  top speed 600 mm/s  acceleration 6000 mm/s2 }
board walnut { wood black-walnut  thickness 12 mm }
`;
const recipe = (name: string, use = 'workshop.kerf') => `use "${use}"
recipe ${name} {
  laser shed
  blank t { of walnut  size 100 x 80 mm }
  engrave e on t {
    circle 20 mm at 50, 40 mm
    power 60 %
    speed 200 mm/s
    passes 2
    pitch 0.1 mm
  }
}
`;

const shown: ShowDocumentParams[] = [];
let said: ShowMessageParams[] = [];
let client: LanguageClient;
beforeAll(async () => {
    mkdirSync(folder);
    writeFileSync(path.join(folder, 'workshop.kerf'), workshop);
    writeFileSync(path.join(folder, 'plate.kerf'), recipe('plate'));
    writeFileSync(path.join(folder, 'two.kerf'), `${recipe('one')}${recipe('other').split('\n').slice(1).join('\n')}`);
    writeFileSync(path.join(folder, 'wrong.kerf'), recipe('wrong').replace('of walnut', 'of walnot'));
    writeFileSync(path.join(top, 'outside.kerf'), recipe('outside', 'shop/workshop.kerf'));
    ({ client } = await LanguageClient.start(folder, pathToFileURL(folder).toString(), {
        workspace: { executeCommand: {} },
        window: { showDocument: { support: true } },
        answers: {
            'window/showDocument': (params: ShowDocumentParams) => {
                shown.push(params);
                return { success: true };
            },
        },
    }));
    client.connection.onNotification('window/showMessage', (params: ShowMessageParams) => void said.push(params));
});
afterEach(() => {
    shown.length = 0;
    said = [];
});
afterAll(() => {
    client.stop();
    rmSync(top, { recursive: true, force: true });
});

const run = <T>(command: string, argument: object): Promise<T> =>
    client.connection.sendRequest('workspace/executeCommand', { command, arguments: [argument] });
const madeIn = (name: string) => readdirSync(path.join(folder, 'made', name)).toSorted();

describe('commands in any editor', () => {
    it('writes what the extension’s own request writes, says so, and shows the job sheet in a browser', async () => {
        const uri = uriOf('plate.kerf');
        await run('kerfbook.build', { uri });
        const byCommand = new Map(
            madeIn('plate').map((name) => [name, readFileSync(path.join(folder, 'made/plate', name), 'utf8')]),
        );
        expect([...byCommand.keys()]).toEqual(expect.arrayContaining(['job-sheet.html', 'written.json']));
        expect(shown).toEqual([{ uri: uriOf('made/plate/job-sheet.html'), external: true }]);
        expect(said[0]?.message).toMatch(/^Files written to made\/plate: \d+\./);
        rmSync(path.join(folder, 'made'), { recursive: true });
        await client.connection.sendRequest(requests.writeRecipe.method, { uri, recipe: 'plate' });
        const byRequest = new Map(
            madeIn('plate').map((name) => [name, readFileSync(path.join(folder, 'made/plate', name), 'utf8')]),
        );
        expect(byCommand).toEqual(byRequest);
    });

    it('makes a coupon of the only board and laser there are, and shows its rows', async () => {
        await run('kerfbook.coupon', { uri: uriOf('workshop.kerf') });
        expect(madeIn('coupon-walnut-shed')).toEqual(expect.arrayContaining(['coupon.kerf', 'coupon.svg']));
        expect(shown.map(({ uri }) => uri)).toEqual([uriOf('made/coupon-walnut-shed/coupon.kerf')]);
    });

    it('writes a run of today with every step as it was planned, and shows it', async () => {
        const { uri } = await run<{ uri: string }>('kerfbook.finishRun', { uri: uriOf('plate.kerf'), notes: ['Dry.'] });
        const text = readFileSync(fileURLToPath(uri), 'utf8');
        expect(text).toContain(`run plate ${dayOf(new Date())} {`);
        expect(text).toMatch(/\n {2}e of walnut 60 % at 200 mm\/s x 2/);
        expect(text).toContain('note "Dry."');
        expect(shown.map((each) => each.uri)).toEqual([uri]);
        expect(said[0]?.message).toContain('runs/');
    });

    it('begins a recipe with what the shop has, which has no errors, and shows it', async () => {
        const { uris } = await run<{ uris: string[] }>('kerfbook.new', {
            title: 'Swallow dish',
            technique: 'engraving',
            size: { width: 90, height: 60 },
        });
        const text = readFileSync(fileURLToPath(uris[0]!), 'utf8');
        expect(text).toContain('recipe swallow-dish "Swallow dish"');
        expect(text).toMatch(/of walnut\b/);
        expect(text).toContain('laser shed');
        expect(shown.map(({ uri }) => uri)).toEqual([uris[0]]);
        await client.open(uris[0]!, text);
        await client.diagnostics(uris[0]!, (found) => found.every(({ severity }) => severity !== 1));
    });

    it('stand above each recipe', async () => {
        const lenses = await client.connection.sendRequest<CodeLens[]>('textDocument/codeLens', {
            textDocument: { uri: uriOf('plate.kerf') },
        });
        const commands = lenses.flatMap(({ command }) => (command?.command ? [command] : []));
        expect(commands.map(({ command }) => command)).toEqual(['kerfbook.build', 'kerfbook.finishRun']);
        expect(commands[0]?.arguments).toEqual([{ uri: uriOf('plate.kerf'), recipe: 'plate' }]);
    });
});

describe('the built server in a process of its own', () => {
    it('leads findings to the manual beside it, and writes by command', async () => {
        const server = new WireServer();
        try {
            const found = new Promise<PublishDiagnosticsParams>((resolve) => {
                server.connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
                    if (params.uri === uriOf('wrong.kerf') && params.diagnostics.length > 0) resolve(params);
                });
            });
            const { capabilities } = await server.initialize(pathToFileURL(folder).toString(), {
                workspace: { executeCommand: {} },
                textDocument: { publishDiagnostics: { codeDescriptionSupport: true } },
            });
            expect(capabilities.executeCommandProvider?.commands).toContain('kerfbook.build');
            const text = readFileSync(path.join(folder, 'wrong.kerf'), 'utf8');
            void server.connection.sendNotification('textDocument/didOpen', {
                textDocument: { uri: uriOf('wrong.kerf'), languageId: 'kerfbook', version: 1, text },
            });
            const { href } = (await found).diagnostics[0]!.codeDescription!;
            const [page, rule] = href.split('#');
            expect(readFileSync(fileURLToPath(page!), 'utf8')).toContain(`### ${rule}\n`);
            rmSync(path.join(folder, 'made'), { recursive: true, force: true });
            await server.connection.sendRequest('workspace/executeCommand', {
                command: 'kerfbook.build',
                arguments: [{ uri: uriOf('plate.kerf') }],
            });
            expect(madeIn('plate')).toContain('job-sheet.html');
        } finally {
            server.stop();
        }
    });
});

describe('a command that cannot be done', () => {
    const failing = async (command: string, argument: object): Promise<{ code: number; message: string }> => {
        try {
            await run(command, argument);
        } catch (error) {
            return error as { code: number; message: string };
        }
        throw new Error('It was done.');
    };

    it('says what is missing, and writes nothing', async () => {
        const before = readdirSync(folder).toSorted();
        const cases: [string, object, string][] = [
            ['kerfbook.build', { uri: uriOf('two.kerf') }, 'Say which recipe: one, other.'],
            ['kerfbook.build', { uri: uriOf('two.kerf'), recipe: 'third' }, 'There is no recipe called “third” in this file.'],
            ['kerfbook.build', { uri: uriOf('lost.kerf') }, 'There is no such file in the workspace.'],
            [
                'kerfbook.coupon',
                { uri: uriOf('plate.kerf'), sheet: 'oak' },
                'Nothing was written. There is no board or veneer oak here',
            ],
            ['kerfbook.new', { title: 'x', technique: 'engraving', board: 'stone' }, 'There is no board stone; there is walnut.'],
            ['kerfbook.new', { title: 'x', technique: 'engraving', fill: 'blue' }, 'A fill is for the technique filled'],
            [
                'kerfbook.new',
                { title: 'x', technique: 'filled', fill: 'sky' },
                'There is no resin and no colour sky; there is blue',
            ],
        ];
        for (const [command, argument, words] of cases) {
            const { code, message } = await failing(command, argument);
            expect(message).toContain(words);
            expect(code).toBe(LSPErrorCodes.RequestFailed);
        }
        expect(readdirSync(folder).toSorted()).toEqual(before);
        expect(shown).toEqual([]);
    });

    it('refuses what it does not take, by the place', async () => {
        expect((await failing('kerfbook.new', { title: '', technique: 'sawing' })).message).toMatch(/title: .*technique: /);
        expect((await failing('kerfbook.build', {})).message).toContain('uri');
        expect((await failing('kerfbook.burn', {})).message).toContain('There is no command kerfbook.burn.');
    });

    it('writes nothing outside of the workspace, for a file that is open there nor for a new one', async () => {
        const outside = pathToFileURL(path.join(top, 'outside.kerf')).toString();
        await client.open(outside, readFileSync(fileURLToPath(outside), 'utf8'));
        const beyond = { title: 'dish', technique: 'engraving', folder: pathToFileURL(top).toString() };
        for (const [command, argument] of [
            ['kerfbook.build', { uri: outside }],
            ['kerfbook.finishRun', { uri: outside }],
            ['kerfbook.new', beyond],
        ] as const)
            expect((await failing(command, argument)).message).toContain('lead out of the workspace');
        expect(readdirSync(top).toSorted()).toEqual(['outside.kerf', 'shop']);
    });

    it('is for editors without commands of their own', async () => {
        const { client: own, answer } = await LanguageClient.start(folder, pathToFileURL(folder).toString(), {
            workspace: { executeCommand: {} },
            options: { commands: ['kerfbook.writeFiles'] },
        });
        own.stop();
        expect(answer.capabilities.executeCommandProvider).toBeUndefined();
        expect(existsSync(path.join(top, 'made'))).toBe(false);
    });
});
