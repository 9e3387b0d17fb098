import { readFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import { type Diagnostic, DiagnosticTag } from 'vscode-languageserver';
import { version } from '../../package.json';
import { allPages } from '../../server/rule-pages';
import { LanguageClient, type Says } from '../kit/language-client';

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
const manual = new URL('../../extension/docs', import.meta.url).toString();
const uri = pathToFileURL(`${samples}/of-no-effect.kerf`).toString();
const text = `use "workshop.kerf"
recipe coaster {
  laser shed
  art spare "art/heron.svg"
  blank disc { of walnut-12  size 100 x 80 mm }
  engrave e on disc {
    circle 20 mm at 50, 40 mm
    passes 2
    depth 0.3 mm
    allow not-mirrored because "It was so last year."
  }
}
`;

const every: Says = {
    manual,
    textDocument: {
        publishDiagnostics: { codeDescriptionSupport: true, tagSupport: { valueSet: [DiagnosticTag.Unnecessary] } },
    },
};

let client: LanguageClient;
afterEach(() => client.stop());

async function findings(says: Says): Promise<readonly Diagnostic[]> {
    ({ client } = await LanguageClient.start(samples, pathToFileURL(samples).toString(), says));
    await client.open(uri, text);
    return client.diagnostics(uri, (found) => found.some(({ code }) => code === 'allow-silences-nothing'));
}

const of = (rule: string, found: readonly Diagnostic[]) => found.find(({ code }) => code === rule);

describe('a finding', () => {
    it('leads to the page of its rule where it lies beside the program, and what is of no effect is faded', async () => {
        const found = await findings(every);
        for (const { code, codeDescription } of found) expect(codeDescription?.href).toBe(`${manual}/rules.md#${code}`);
        expect(of('unused-name', found)?.tags).toEqual([DiagnosticTag.Unnecessary]);
        expect(of('allow-silences-nothing', found)?.tags).toEqual([DiagnosticTag.Unnecessary]);
        expect(found.filter(({ tags }) => tags !== undefined)).toHaveLength(2);
    });

    it('leads to a text of the server’s own where the editor opens such texts', async () => {
        const found = await findings({ ...every, workspace: { textDocumentContent: { dynamicRegistration: false } } });
        expect(of('unused-name', found)?.codeDescription?.href).toBe('kerfbook-page:/unused-name.md');
    });

    it('leads nowhere and is not faded for a client that shows neither', async () => {
        const found = await findings({ manual });
        expect(found.map(({ codeDescription, tags }) => codeDescription ?? tags)).toEqual(found.map(() => undefined));
    });

    it('leads nowhere where there is no manual', async () => {
        const { manual: _, ...none } = every;
        expect(of('unused-name', await findings(none))).not.toHaveProperty('codeDescription');
    });

    it('finds its rule in the manual under a heading of its own', () => {
        const headings = new Set(readFileSync(fileURLToPath(`${manual}/rules.md`), 'utf8').match(/^### .*$/gm));
        for (const { id } of allPages()) expect(headings).toContain(`### ${id}`);
    });
});

describe('the server', () => {
    it('says its name and number', async () => {
        const started = await LanguageClient.start(samples, pathToFileURL(samples).toString());
        client = started.client;
        expect(started.answer.serverInfo).toEqual({ name: 'kerfbook', version });
    });
});
