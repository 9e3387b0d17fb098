import { EmptyFileSystem, type LangiumDocument, URI } from 'langium';
import { expect, it } from 'vitest';
import type { Diagnostic } from 'vscode-languageserver';
import { createKerfServices } from '../../language/module';
import type { Page } from '../../shared/rules/page';

const page = (id: string): Page => ({
    id,
    title: `About ${id}`,
    severities: ['warning'],
    condition: 'When.',
    why: '',
    mend: '',
    source: '',
});

const text = `recipe r {
  laser shed
  engrave one {
    depth 0.3 mm
  }
  engrave two {
    depth 0.3 mm
    allow 
  }
}
recipe s {
  laser shed
}
`;

/** Lines count from 0. */
function found(code: string, line: number): Diagnostic {
    const at = { line, character: 4 };
    return { code, message: `What ${code} found.`, range: { start: at, end: at } };
}

async function proposals(diagnostics: readonly Diagnostic[]) {
    const { kerf, shared } = createKerfServices(EmptyFileSystem, {
        tradePages: ['a-rule', 'b-rule', 'c-rule', 'd-rule'].map(page),
        diagnostics: (_document: LangiumDocument) => diagnostics,
    });
    await shared.workspace.WorkspaceManager.initializeWorkspace([]);
    const document = shared.workspace.LangiumDocumentFactory.fromString(text, URI.parse('file:///shop/r.kerf'));
    shared.workspace.LangiumDocuments.addDocument(document);
    await shared.workspace.DocumentBuilder.build([document], { validation: false });
    const list = await kerf.lsp.CompletionProvider!.getCompletion(document, {
        textDocument: { uri: document.uri.toString() },
        position: { line: 7, character: 10 },
    });
    const rules = (list?.items ?? []).filter(({ label }) => /^.-rule$/.test(label));
    return rules.sort((a, b) => ((a.sortText ?? a.label) < (b.sortText ?? b.label) ? -1 : 1));
}

it('behind `allow` stands first what is found at the step, then what is found in the recipe', async () => {
    const all = await proposals([found('b-rule', 3), found('c-rule', 6), found('d-rule', 11)]);
    expect(all.map(({ label }) => label)).toEqual(['c-rule', 'b-rule', 'a-rule', 'd-rule']);
    expect(all[0]!.documentation).toEqual({ kind: 'markdown', value: 'What c-rule found.' });
    expect(all[2]!.documentation).toEqual({ kind: 'markdown', value: 'When.' });
});

it('where nothing is found the rules stand in the order of their names', async () => {
    expect((await proposals([])).map(({ label }) => label)).toEqual(['a-rule', 'b-rule', 'c-rule', 'd-rule']);
});
