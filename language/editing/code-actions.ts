import { AstUtils, CstUtils, type LangiumDocument, type LangiumDocuments, URI } from 'langium';
import type { CodeActionProvider } from 'langium/lsp';
import {
    type CodeAction,
    CodeActionKind,
    type CodeActionParams,
    type Diagnostic,
    type SnippetTextEdit,
    type WorkspaceEdit,
} from 'vscode-languageserver';
import type { Change } from '../../shared/recipe/finding';
import { type Message, phrase } from '../../shared/recipe/phrase';
import { type DiagnosticData, rangeOf } from '../diagnostic';
import { isNewer } from '../edition';
import { isRecipe, isStep } from '../generated/ast';
import { whereOf } from '../lowering/places';
import { pinActions } from '../planned/pin-actions';
import type { KerfServices } from '../services';
import type { KerfLanguageServer } from '../workspace/language-server';
import { fixAll } from './fix-all';
import { type ActionResolver, atOnce, LateEdits, type Offer } from './late-edits';
import { refactorActions } from './refactor/refactor-actions';
import { editsOf, uriOf } from './text-edits';

/** Offers what the findings carry with them, and to pin what the last plan has solved: nothing is worked out again. */
export class KerfCodeActions implements CodeActionProvider, ActionResolver {
    private readonly documents: LangiumDocuments;

    private readonly late: LateEdits;

    private readonly planned: KerfServices['outside']['planned'];

    constructor(private readonly services: KerfServices) {
        this.planned = services.outside.planned;
        this.documents = services.shared.workspace.LangiumDocuments;
        this.late = new LateEdits(this.documents);
    }

    getCodeActions(document: LangiumDocument, params: CodeActionParams): CodeAction[] {
        if (isNewer(document)) return [];
        const { only, diagnostics } = params.context;
        const wants = (kind: CodeActionKind) =>
            only === undefined || only.some((each) => kind === each || kind.startsWith(`${each}.`));
        const fixesOf = (all: readonly Diagnostic[]) => all.flatMap((diagnostic) => this.offersFor(diagnostic, document));
        const fixes = wants(CodeActionKind.QuickFix) ? fixesOf(diagnostics) : [];
        // Asked for by name only: on the light bulb the fixes stand one by one. It is about the file, whatever the asker knows of it.
        const all = wantsFixAll(params)
            ? fixAll(fixesOf(this.services.outside.diagnostics(document) ?? diagnostics).map(atOnce), document.textDocument)
            : undefined;
        const refactors = only === undefined || only.some((kind) => kind.startsWith(CodeActionKind.Refactor) || kind === '');
        const { resolvesEdits } = (this.services.shared.lsp.LanguageServer as KerfLanguageServer).client;
        const others = [
            ...pinActions(document, params, this.planned(document.uri.toString())),
            ...(refactors ? refactorActions(document, params, this.services) : []),
        ].filter(({ action: { kind } }) => wants(kind ?? ''));
        return [
            ...fixes.map((offer) => (resolvesEdits ? this.late.promise(offer) : atOnce(offer))),
            ...(all === undefined ? [] : [all]),
            ...others.map((offer) => (resolvesEdits ? this.late.promise(offer) : atOnce(offer))),
        ];
    }

    resolve(action: CodeAction): CodeAction {
        return this.late.resolve(action);
    }

    private offersFor(diagnostic: Diagnostic, document: LangiumDocument): Offer[] {
        const data = diagnostic.data as DiagnosticData | undefined;
        if (!Array.isArray(data?.fixes) || data.where === undefined || isStale(diagnostic, data, document)) return [];
        const offers = data.fixes.map(({ title, changes, preferred }) =>
            this.offer(title, changes, diagnostic, preferred === true),
        );
        if (data.allowable) offers.push(...this.allowing(data.rule, diagnostic, document));
        return offers;
    }

    private allowing(rule: string, diagnostic: Diagnostic, document: LangiumDocument): Offer[] {
        const root = document.parseResult.value.$cstNode;
        const leaf = root && CstUtils.findLeafNodeBeforeOffset(root, document.textDocument.offsetAt(diagnostic.range.start));
        const step = leaf && AstUtils.getContainerOfType(leaf.astNode, isStep);
        const holder = step ?? (leaf && AstUtils.getContainerOfType(leaf.astNode, isRecipe));
        if (holder === undefined) return [];
        const change: Change = { do: 'add', block: whereOf(holder), statement: `allow ${rule} because ""` };
        const title =
            step === undefined ? phrase`Allow it in this recipe, with a reason` : phrase`Allow it in this step, with a reason`;
        const offer = this.offer(title, [change], diagnostic, false);
        return [{ ...offer, edit: () => this.withReason(change, rule) ?? offer.edit() }];
    }

    /** The same with the cursor between the quotes, where the editor can; undefined where its indentation would be the editor's own. */
    private withReason(change: Change, rule: string): WorkspaceEdit | undefined {
        const { takesSnippets } = (this.services.shared.lsp.LanguageServer as KerfLanguageServer).client;
        const uri = uriOf(change);
        const document = this.documents.getDocument(URI.parse(uri));
        const [span] = document === undefined ? [] : editsOf(change, document.textDocument.getText());
        if (!takesSnippets || document === undefined || span === undefined) return undefined;
        const range = rangeOf({ uri, ...span }, document);
        // Of several lines, an editor indents those behind the first like the line in which they begin.
        if (/\n./.test(span.text) && range.start.character > 0) return undefined;
        const plain = span.text.replaceAll(/[\\$}]/g, '\\$&');
        const value = plain.replace(`allow ${rule} because ""`, `allow ${rule} because "$0"`);
        const { version } = this.services.shared.workspace.TextDocuments.get(uri) ?? { version: null };
        const edit: SnippetTextEdit = { range, snippet: { kind: 'snippet', value } };
        return { documentChanges: [{ textDocument: { uri, version }, edits: [edit] }] };
    }

    private offer(title: Message, changes: readonly Change[], diagnostic: Diagnostic, preferred: boolean): Offer {
        // Two thirds of it, which nobody who takes the action needs again.
        const { data: _, relatedInformation: __, ...mended } = diagnostic;
        return {
            action: {
                title,
                kind: CodeActionKind.QuickFix,
                diagnostics: [mended],
                ...(preferred && { isPreferred: true }),
            },
            edit: () => this.edit(changes),
            files: changes.map(uriOf),
        };
    }

    private edit(changes: readonly Change[]): WorkspaceEdit {
        const edits: NonNullable<WorkspaceEdit['changes']> = {};
        for (const change of changes) {
            const uri = uriOf(change);
            const document = this.documents.getDocument(URI.parse(uri));
            if (document === undefined) continue;
            const texts = editsOf(change, document.textDocument.getText()).map(({ offset, length, text }) => ({
                range: rangeOf({ uri, offset, length }, document),
                newText: text,
            }));
            edits[uri] = [...(edits[uri] ?? []), ...texts];
        }
        return { changes: edits };
    }
}

/** Whether somebody asks, by name, that all be mended. */
export function wantsFixAll({ context: { only } }: CodeActionParams): boolean {
    const { SourceFixAll } = CodeActionKind;
    return only?.some((kind) => SourceFixAll === kind || SourceFixAll.startsWith(`${kind}.`)) === true;
}

/** The editor moves a squiggle along while one types; the fix it carries still points at the old place. */
function isStale(diagnostic: Diagnostic, { where }: DiagnosticData, document: LangiumDocument): boolean {
    const then = rangeOf(where, document);
    const { start } = diagnostic.range;
    return then.start.line !== start.line || then.start.character !== start.character;
}
