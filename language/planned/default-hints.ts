import { type AstNode, GrammarUtils, type LangiumDocument } from 'langium';
import * as ast from '../generated/ast';
import { itemKey } from '../vocabulary/item-key';
import { propertiesOf } from '../vocabulary/lookup';
import type { Property } from '../vocabulary/property';

/** What a step does without a line for it: where a first line would stand, and the lines as they would be written. */
export interface DefaultHint {
    readonly offset: number;
    readonly lines: readonly string[];
}

/** The steps of a file with what is done although nobody has written it. A step of a variant that adjusts one of its base says nothing by itself. */
export function* defaultHints(document: LangiumDocument): Iterable<DefaultHint> {
    const file = document.parseResult.value;
    if (!ast.isFile(file)) return;
    for (const step of file.entries.flatMap(wholeSteps)) {
        const cst = step.$cstNode;
        const lines = silentLines(step).map(({ words, otherwise }) =>
            otherwise === 'off' ? `without ${words}` : `${words} ${otherwise}`,
        );
        if (cst === undefined || lines.length === 0) continue;
        yield { offset: GrammarUtils.findNodeForKeyword(cst, '{')?.end ?? cst.end, lines };
    }
}

function wholeSteps(entry: ast.Entry): ast.Step[] {
    if (ast.isRoutine(entry)) return entry.items.filter(ast.isStep);
    if (!ast.isRecipe(entry)) return [];
    return entry.items.flatMap((item) => {
        if (ast.isInserted(item)) return item.items;
        return ast.isStep(item) && entry.base === undefined ? [item] : [];
    });
}

function silentLines(step: ast.Step): Property[] {
    const items: readonly AstNode[] = step.items ?? [];
    const said = new Set(items.map(itemKey));
    return propertiesOf(step.$type).filter(({ hinted, key }) => hinted === true && !said.has(key));
}
