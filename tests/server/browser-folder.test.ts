import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, expect, it } from 'vitest';
import type { WorkspaceDiagnosticReport, WorkspaceDocumentDiagnosticReport } from 'vscode-languageserver/node';
import type { ListAnswer, PageAnswer, ReadAnswer } from '../../shared/view/protocol';
import { editorRequests, requests } from '../../shared/view/requests';
import { LanguageClient, type Started } from '../kit/language-client';

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
const samplesUri = pathToFileURL(samples).toString();
const pulls = { textDocument: { diagnostic: {} } };

const answers = {
    [editorRequests.read.method]: ({ uri }: { uri: string }): ReadAnswer => {
        try {
            return { base64: readFileSync(fileURLToPath(uri)).toString('base64') };
        } catch {
            return { problem: 'missing' };
        }
    },
    [editorRequests.list.method]: ({ uri }: { uri: string }): ListAnswer => ({
        entries: readdirSync(fileURLToPath(uri), { withFileTypes: true }).map((entry) => ({
            name: entry.name,
            kind: entry.isDirectory() ? 'folder' : 'file',
        })),
    }),
};

let client: LanguageClient;
afterEach(() => client.stop());

/** What is known of each file of the folder, none of them open, once each has been worked out. */
async function problems(started: Promise<Started>): Promise<Record<string, string[]>> {
    ({ client } = await started);
    const report = await client.connection.sendRequest<WorkspaceDiagnosticReport>('workspace/diagnostic', {
        previousResultIds: [],
    });
    const itemsOf = (each: WorkspaceDocumentDiagnosticReport) => (each.kind === 'full' ? each.items : []);
    return Object.fromEntries(
        report.items.map((each) => [
            path.basename(each.uri),
            itemsOf(each)
                .map(({ code, message }) => `${code}: ${message}`)
                .sort(),
        ]),
    );
}

it('in a browser the folder is read and found fault with as on a desktop', async () => {
    const there = await problems(LanguageClient.start(samples, samplesUri, pulls));
    client.stop();
    const here = await problems(LanguageClient.startInBrowser(samplesUri, { ...pulls, answers }));
    expect(Object.keys(here).sort()).toEqual(
        readdirSync(samples)
            .filter((name) => name.endsWith('.kerf'))
            .sort(),
    );
    expect(Object.values(here).flat().length).toBeGreaterThan(0);
    expect(here).toEqual(there);
});

it('in a browser a comparison with what was committed is refused for good', async () => {
    ({ client } = await LanguageClient.startInBrowser(samplesUri, { ...pulls, answers }));
    const uri = `${samplesUri}/heron-tray.kerf`;
    const answer = await client.connection.sendRequest<PageAnswer>(requests.compare.method, { uri });
    expect(answer).toMatchObject({ problem: expect.stringMatching(/git/), final: true });
});

it('an editor that cannot list a folder has its open files checked all the same', async () => {
    ({ client } = await LanguageClient.startInBrowser(samplesUri, {
        answers: { [editorRequests.read.method]: answers[editorRequests.read.method]! },
    }));
    const uri = `${samplesUri}/heron-tray-faulty.kerf`;
    await client.open(uri, readFileSync(path.join(samples, 'heron-tray-faulty.kerf'), 'utf8'));
    await client.diagnostics(uri, (found) => found.some(({ code }) => code === 'unknown-name'));
});
