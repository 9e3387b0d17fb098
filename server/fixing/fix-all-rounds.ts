import { type LangiumDocument, URI } from 'langium';
import { type CodeAction, CodeActionKind, type TextEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { isBuiltIn } from '../../language/built-in';
import { toDiagnostic } from '../../language/diagnostic';
import type { KerfServices } from '../../language/services';
import type { Asker } from '../engine/asker';
import { withNewFiles } from '../starting/with-new-files';
import { openWorkshop, type Source } from '../workshop/open-workshop';

/** More rounds than these are not made: each mends what the one before has brought to light. */
const MAX_ROUNDS = 6;

/**
 * One action that does what doing `first`, and then what is found, and so on, would come to: some fixes can only be made once
 * others are. The same files as in the editor, saved or not, are read in services of their own.
 * @param first fix all of the document as it is
 */
export async function fixAllRounds(
    first: CodeAction,
    document: LangiumDocument,
    { shared }: KerfServices,
    source: Source,
    asker: Asker,
): Promise<CodeAction> {
    const uri = document.uri.toString();
    const before = document.textDocument.getText();
    // Without a subject, so that nothing here takes the place of what is worked out for the editor.
    const aside: Asker = { ask: (job, arts) => asker.ask(job, arts) };
    const live = shared.workspace.LangiumDocuments.all.filter((each) => !isBuiltIn(each.uri.toString())).toArray();
    const others = new Map(live.map((each) => [each.uri.toString(), each.textDocument.getText()]));
    const mended = (text: string, { edit }: CodeAction): string =>
        TextDocument.applyEdits(TextDocument.create(uri, 'kerfbook', 0, text), edit?.changes?.[uri] ?? []);
    const seen = new Set([before]);
    let text = mended(before, first);
    let rounds = 1;
    for (; rounds < MAX_ROUNDS && !seen.has(text); rounds++) {
        seen.add(text);
        const next = await fixAllOf(uri, withNewFiles(source, new Map(others).set(uri, text), new Map()), aside);
        if (next === undefined) break;
        text = mended(text, next);
    }
    if (rounds === 1) return first;
    return { ...first, edit: { changes: { [uri]: text === before ? [] : [replacing(document.textDocument, text)] } } };
}

async function fixAllOf(uri: string, source: Source, asker: Asker): Promise<CodeAction | undefined> {
    const { workshop, documents } = await openWorkshop(source, [uri], undefined, asker);
    const [document] = documents;
    if (document === undefined) return undefined;
    const findings = [...workshop.textFindings(document), ...((await workshop.tradeFindings(document)) ?? [])];
    const whole = {
        start: document.textDocument.positionAt(0),
        end: document.textDocument.positionAt(document.textDocument.getText().length),
    };
    const actions = await workshop.services.lsp.CodeActionProvider?.getCodeActions(document, {
        textDocument: { uri: URI.parse(uri).toString() },
        range: whole,
        context: {
            diagnostics: findings.filter(({ where }) => where.uri === uri).map((finding) => toDiagnostic(finding, document)),
            only: [CodeActionKind.SourceFixAll],
        },
    });
    return actions?.find((action): action is CodeAction => 'kind' in action && action.kind === CodeActionKind.SourceFixAll);
}

/** The edit that leads from a text to another, without what both begin and end with. */
function replacing(document: TextDocument, after: string): TextEdit {
    const before = document.getText();
    const most = Math.min(before.length, after.length);
    let start = 0;
    while (start < most && before[start] === after[start]) start++;
    let end = 0;
    while (end < most - start && before[before.length - 1 - end] === after[after.length - 1 - end]) end++;
    return {
        range: { start: document.positionAt(start), end: document.positionAt(before.length - end) },
        newText: after.slice(start, after.length - end),
    };
}
