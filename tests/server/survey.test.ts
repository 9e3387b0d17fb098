import { EmptyFileSystem, URI } from 'langium';
import { expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { createKerfServices } from '../../language/module';
import type { Asker } from '../../server/engine/asker';
import type { Job } from '../../server/engine/jobs';
import { ArtCache } from '../../server/workshop/art-cache';
import { Workshop } from '../../server/workshop/workshop';

const uri = URI.parse('file:///shop/many.kerf');
const text = ['a', 'b', 'c', 'd'].map((name) => `recipe ${name} "${name}" {\n  revision 1\n}\n`).join('');

it('a file that is typed in while it is worked out is left to its newer text', async () => {
    const { shared, kerf } = createKerfServices(EmptyFileSystem);
    await shared.workspace.WorkspaceManager.initializeWorkspace([]);
    const open = TextDocument.create(uri.toString(), 'kerfbook', 1, text);
    shared.workspace.TextDocuments.set(open);
    await shared.workspace.DocumentBuilder.update([uri], []);
    const document = shared.workspace.LangiumDocuments.getDocument(uri)!;
    const asked: string[] = [];
    let typed = false;
    const asker = {
        ask: async (job: Job) => {
            asked.push('recipe' in job ? job.recipe.name : job.do);
            if (typed && asked.length === 2) TextDocument.update(open, [{ text: `${text}\n` }], 2);
            return { findings: [], figures: [] };
        },
    } as unknown as Asker;
    const arts = new ArtCache(async () => ({ problem: 'missing', version: 'missing' }));
    const workshop = new Workshop(kerf, arts, asker);
    expect(await workshop.survey(document)).toMatchObject({ findings: [] });
    expect(asked.splice(0)).toEqual(['a', 'b', 'c', 'd']);
    typed = true;
    expect(await workshop.survey(document)).toBeUndefined();
    expect(asked).toEqual(['a', 'b']);
});
