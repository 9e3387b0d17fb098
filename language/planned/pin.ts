import { GrammarUtils } from 'langium';
import { Layout } from '../editing/layout';
import { editsOf, type SpanEdit } from '../editing/text-edits';
import { type Cut, type Engrave, isDepth, isFigure } from '../generated/ast';
import { heldStatements } from '../lowering/held-statements';
import { whereOf } from '../lowering/places';
import { isLine } from '../vocabulary/lookup';

type LaserStep = Engrave | Cut;
type Item = LaserStep['items'][number];

/** Whether there is something from which settings can be worked out once none is written. */
export function hasWish(step: LaserStep): boolean {
    return step.$type === 'Cut' || step.items.some(isWish);
}

function isWish(item: Item): boolean {
    return isDepth(item) || (isFigure(item) && isLine(item, 'tone'));
}

/** Writes statements behind what the step asks for, each on a line of its own where the block has lines. */
export function pinEdit(step: LaserStep, statements: readonly string[], text: string): SpanEdit | undefined {
    const cst = step.$cstNode;
    const items = step.items as Item[];
    const anchor = (items.find(isWish) ?? items.at(-1))?.$cstNode;
    const brace = cst && GrammarUtils.findNodeForKeyword(cst, '{');
    if (cst === undefined || brace === undefined || statements.length === 0) return undefined;
    const after = anchor?.end ?? brace.end;
    const layout = new Layout(text);
    const rest = text.slice(after, layout.lineEnd(after)).trim();
    // A comment behind the wish stays behind the wish.
    const endsLine = rest === '' || rest.startsWith('//');
    if (!endsLine) return { offset: after, length: 0, text: statements.map((statement) => `  ${statement}`).join('') };
    const indent = anchor === undefined ? layout.indentAt(cst.offset) + layout.indent : layout.indentAt(anchor.offset);
    return {
        offset: layout.lineEnd(after),
        length: 0,
        text: statements.map((each) => `${layout.lineBreak}${indent}${each}`).join(''),
    };
}

export function unpinEdits(step: LaserStep, text: string): SpanEdit[] {
    return heldStatements(step).flatMap((item) => editsOf({ do: 'remove', where: whereOf(item) }, text));
}
