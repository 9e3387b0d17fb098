import { AstUtils, type CstNode, GrammarUtils } from 'langium';
import * as ast from '../generated/ast';
import { basesOf } from '../variants/lineage';
import { membersOf } from '../variants/members';

/** What bears or uses the name of one step, as in `sand tray called fine`: a step, or what points at one of the base. */
export type Called = Exclude<ast.Step, ast.Engrave | ast.Cut> | ast.StepAt;

export function isCalled(node: unknown): node is Called & { readonly called: string } {
    if (!ast.isStepAt(node) && (!ast.isStep(node) || ast.isEngrave(node) || ast.isCut(node))) return false;
    return node.called !== undefined;
}

/** The word behind `called`. */
export function calledNode(node: Called): CstNode | undefined {
    return GrammarUtils.findNodeForProperty(node.$cstNode, 'called');
}

/** The step whose name stands there: in the base furthest down that has it. Undefined where the word is no such name, or leads nowhere. */
export function stepCalledAt(word: CstNode): ast.Step | undefined {
    const node = word.astNode;
    if (!isCalled(node) || calledNode(node)?.offset !== word.offset) return undefined;
    const recipe = AstUtils.getContainerOfType(node, ast.isRecipe);
    for (const base of recipe === undefined ? [] : basesOf(recipe).reverse()) {
        const origin = membersOf(base).find((item) => isSameCalled(item, node));
        if (origin !== undefined && ast.isStep(origin)) return origin;
    }
    if (ast.isStep(node)) return node;
    // Steps that the same variant puts in can be pointed at, too.
    const own = recipe && membersOf(recipe).find((item) => isSameCalled(item, node));
    return ast.isStep(own) ? own : undefined;
}

/** Everything in a recipe, other than the step itself, that means it by its name. */
export function meantByName(step: ast.Step, recipe: ast.Recipe): Called[] {
    const found: Called[] = [];
    for (const item of membersOf(recipe)) if (item !== step && isSameCalled(item, step) && isCalled(item)) found.push(item);
    for (const item of recipe.items) {
        const at = ast.isInserted(item) || ast.isWithout(item) ? item.step : undefined;
        if (at !== undefined && isSameCalled(at, step)) found.push(at);
    }
    return found;
}

function isSameCalled(one: unknown, other: unknown): boolean {
    return isCalled(one) && isCalled(other) && one.called === other.called && kindOf(one) === kindOf(other);
}

function kindOf(node: Called): string {
    return ast.isStepAt(node) ? node.kind : node.$type.toLowerCase();
}
