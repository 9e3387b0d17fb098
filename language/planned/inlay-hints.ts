import { CstUtils, GrammarUtils, type LangiumDocument } from 'langium';
import type { InlayHintProvider } from 'langium/lsp';
import type { InlayHint, InlayHintParams } from 'vscode-languageserver';
import type { Hint } from '../../shared/view/step-figures';
import { isCount, isDepth, isEngrave, isFigure, isFile, isRecipe, type Step } from '../generated/ast';
import type { KerfServices } from '../services';
import { isLine } from '../vocabulary/lookup';
import { defaultHints } from './default-hints';
import { plannedRun, plannedSteps } from './planned-step';

/** Shows beside the text what nobody has written: what the last plan has worked out, and what is done all the same. Never waits for a plan. */
export class KerfInlayHints implements InlayHintProvider {
    constructor(private readonly services: KerfServices) {}

    getInlayHints(document: LangiumDocument, { range }: InlayHintParams): InlayHint[] {
        const text = document.textDocument;
        const [from, to] = [text.offsetAt(range.start), text.offsetAt(range.end)];
        const hints: InlayHint[] = [];
        for (const [step, figures] of plannedSteps(document, this.services.outside.planned(document.uri.toString()))) {
            for (const { at, label, tooltip } of figures.hints) {
                const offset = placeOf(step, at);
                if (offset < from || offset > to) continue;
                hints.push({ position: text.positionAt(offset), label, tooltip, paddingLeft: true });
            }
        }
        return [...hints, ...this.runHints(document, from, to), ...this.silentHints(document, from, to)];
    }

    /** Behind the brace of a step: the lines that hold without being written. */
    private *silentHints(document: LangiumDocument, from: number, to: number): Iterable<InlayHint> {
        if (!this.services.outside.showsDefaults()) return;
        for (const { offset, lines } of defaultHints(document)) {
            if (offset < from || offset > to) continue;
            yield {
                position: document.textDocument.positionAt(offset),
                label: lines.join(', '),
                tooltip: 'Holds as long as no line says otherwise.',
                paddingLeft: true,
            };
        }
    }

    /** Behind `make 4`: when all of them are ready, and the price of one. */
    private *runHints(document: LangiumDocument, from: number, to: number): Iterable<InlayHint> {
        const planned = this.services.outside.runs(document.uri.toString());
        const file = document.parseResult.value;
        if (!isFile(file) || planned.length === 0) return;
        for (const recipe of file.entries.filter(isRecipe)) {
            const offset = recipe.items.find((item) => isCount(item) && isLine(item, 'make'))?.$cstNode?.end;
            const figures = plannedRun(recipe, planned);
            if (offset === undefined || figures === undefined || offset < from || offset > to) continue;
            yield {
                position: document.textDocument.positionAt(offset),
                label: figures.hint,
                tooltip: { kind: 'markdown', value: figures.hover },
                paddingLeft: true,
            };
        }
    }
}

/** The end of the depth or tone that is asked for, or of the step's first line up to its brace. */
function placeOf(step: Step, at: Hint['at']): number {
    const cst = step.$cstNode;
    if (cst === undefined) return 0;
    if (at === 'wish' && isEngrave(step)) {
        const wish = step.items.find((item) => isDepth(item) || (isFigure(item) && isLine(item, 'tone')));
        if (wish?.$cstNode !== undefined) return wish.$cstNode.end;
    }
    const brace = GrammarUtils.findNodeForKeyword(cst, '{');
    if (brace === undefined) return cst.end;
    return CstUtils.findLeafNodeBeforeOffset(cst, brace.offset - 1)?.end ?? brace.offset;
}
