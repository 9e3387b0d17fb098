import { GCProfiler, setFlagsFromString } from 'node:v8';
import { EmptyFileSystem, URI } from 'langium';
import { expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { lowerFile } from '../../language/lowering/lower-file';
import { createKerfServices } from '../../language/module';
import { textFindings } from '../../language/text-findings';
import { recipeText, shopText } from '../speed/language-texts';

/** Megabytes that outlived two small collections, of all that was made since the profiler began. */
function grownOld({ statistics }: ReturnType<GCProfiler['stop']>): number {
    const old = ({ heapSpaceStatistics }: { heapSpaceStatistics: { spaceName: string; spaceUsedSize: number }[] }) =>
        heapSpaceStatistics.find(({ spaceName }) => spaceName === 'old_space')!.spaceUsedSize;
    const small = statistics.filter(({ gcType }) => gcType === 'Scavenge');
    return small.reduce((sum, { beforeGC, afterGC }) => sum + old(afterGC as never) - old(beforeGC as never), 0) / 1e6;
}

test('what a keystroke makes is gone after the next ones, without a full collection', async () => {
    setFlagsFromString('--no-allocation-site-pretenuring'); // as the server does
    const { shared, kerf } = createKerfServices(EmptyFileSystem);
    await shared.workspace.WorkspaceManager.initializeWorkspace([]);
    const { DocumentBuilder, LangiumDocuments, LangiumDocumentFactory, TextDocuments } = shared.workspace;
    const uri = URI.parse('file:///shop/tray.kerf');
    const open = TextDocument.create(uri.toString(), 'kerfbook', 0, shopText + recipeText(300, 'lines'));
    TextDocuments.set(open);
    const document = LangiumDocumentFactory.fromTextDocument(open, uri);
    LangiumDocuments.addDocument(document);
    await DocumentBuilder.build([document], { validation: false });
    const depth = open.getText().lastIndexOf('depth 0.5') + 'depth '.length;
    const type = async (count: number): Promise<void> => {
        for (let index = 0; index < count; index++) {
            const range = { start: open.positionAt(depth), end: open.positionAt(depth + 3) };
            TextDocument.update(open, [{ range, text: `0.${5 + (index & 1)}` }], open.version + 1);
            await DocumentBuilder.update([uri], []);
            textFindings(document, kerf);
            lowerFile(document, kerf);
            await new Promise((resolve) => setTimeout(resolve, 1));
        }
    };
    await type(30);
    const profiler = new GCProfiler();
    profiler.start();
    await type(60);
    // One tree of this text with its recipes is about half a megabyte: sixty would be thirty.
    expect(grownOld(profiler.stop())).toBeLessThan(5);
});
