import { AstUtils, CstUtils, type LangiumDocument } from 'langium';
import { CodeActionKind, type CodeActionParams } from 'vscode-languageserver';
import { rangeOf } from '../diagnostic';
import type { Offer } from '../editing/late-edits';
import type { SpanEdit } from '../editing/text-edits';
import { type Cut, type Engrave, isCut, isEngrave } from '../generated/ast';
import { heldStatements } from '../lowering/held-statements';
import { hasWish, pinEdit, unpinEdits } from './pin';
import { type PlannedStep, plannedSteps } from './planned-step';

/**
 * Pin writes the settings of the last plan into the step under the cursor; unpin takes them out, so that they are
 * solved again. Neither waits for a plan: a step that was changed since the last one cannot be pinned until the next.
 */
export function pinActions(document: LangiumDocument, params: CodeActionParams, planned: readonly PlannedStep[]): Offer[] {
    const { only } = params.context;
    const kind = CodeActionKind.RefactorRewrite;
    if (only !== undefined && !only.some((wanted) => kind === wanted || kind.startsWith(`${wanted}.`))) return [];
    const step = stepAt(document, document.textDocument.offsetAt(params.range.start));
    if (step === undefined) return [];
    const text = document.textDocument.getText();
    const offers: Offer[] = [];
    const add = (title: string, edits: readonly SpanEdit[]): void => {
        const uri = document.uri.toString();
        const changes = edits.map((edit) => ({ range: rangeOf({ uri, ...edit }, document), newText: edit.text }));
        if (changes.length > 0)
            offers.push({ action: { title, kind }, edit: () => ({ changes: { [uri]: changes } }), files: [uri] });
    };
    const figures = [...plannedSteps(document, planned)].find(([candidate]) => candidate === step)?.[1];
    if (figures !== undefined && figures.pins.length > 0) {
        const edit = pinEdit(step, figures.pins, text);
        const what = figures.guess ? 'the guessed settings (no coupon)' : 'the settings';
        add(`Pin ${what}: ${figures.pins.join(', ')}`, edit === undefined ? [] : [edit]);
    }
    const held = heldStatements(step).map((item) => item.$cstNode?.text ?? '');
    if (held.length > 0 && hasWish(step)) add(`Unpin the settings: ${held.join(', ')}`, unpinEdits(step, text));
    return offers;
}

function stepAt(document: LangiumDocument, offset: number): Engrave | Cut | undefined {
    const root = document.parseResult.value.$cstNode;
    const leaf = root && (CstUtils.findLeafNodeAtOffset(root, offset) ?? CstUtils.findLeafNodeBeforeOffset(root, offset));
    const node =
        leaf && AstUtils.getContainerOfType(leaf.astNode, (each): each is Engrave | Cut => isEngrave(each) || isCut(each));
    const end = node?.$cstNode?.end ?? -1;
    return offset <= end ? node : undefined;
}
