import { type AstNode, AstUtils } from 'langium';
import { isBurnt, isRun } from '../generated/ast';
import { lowerFile } from '../lowering/lower-file';
import { whereOf } from '../lowering/places';
import type { KerfServices } from '../services';

/**
 * What became of a run, as Markdown: for a place in its first line every line of it beside what was to be expected, and what all runs
 * say of the power; for one in a line that line. Undefined anywhere else, and where nothing in it was measured.
 */
export async function runHover(node: AstNode, services: KerfServices): Promise<string | undefined> {
    const run = AstUtils.getContainerOfType(node, isRun);
    const target = run?.recipe?.ref;
    const burnt = AstUtils.getContainerOfType(node, isBurnt);
    if (run === undefined || target === undefined || (burnt === undefined && node !== run)) return undefined;
    const recipe = lowerFile(AstUtils.getDocument(target), services).find(({ name }) => name === target.name);
    if (recipe === undefined) return undefined;
    const facts = await services.outside.runFacts(recipe, whereOf(run));
    if (facts === undefined) return undefined;
    const { offset } = burnt === undefined ? { offset: undefined } : whereOf(burnt);
    const lines = facts.lines.filter((line) => offset === undefined || line.offset === offset);
    if (lines.length === 0) return undefined;
    const told = lines.map(({ step, words }) => `- ${step}: ${words}`).join('\n');
    return burnt === undefined
        ? [told, 'Power of the laser:', facts.boards.map((line) => `- ${line}`).join('\n')].join('\n\n')
        : told;
}
