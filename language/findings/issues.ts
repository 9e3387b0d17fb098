import { AstUtils, type LangiumDocument } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import { fingerprintOf, isSameMark } from '../fingerprint';
import * as ast from '../generated/ast';
import { whereOf, whereOfPart } from '../lowering/places';
import { runsAndRecipesOf, runsOf } from '../names/runs-in-sight';
import type { KerfServices } from '../services';
import { replaceWith, say } from './say';

/** A run with what it says of the recipe that it followed. */
interface Marked {
    readonly run: ast.Run;
    readonly mark: string;
    readonly issue: ast.Count;
}

/**
 * Issues that do not tell which recipe is meant: one that stayed while the recipe changed after a run, and one that two runs bear
 * whose recipes were unlike. Only of recipes that say an issue, and of runs that keep the fingerprint of what they followed.
 */
export function* issueFindings(document: LangiumDocument, services: KerfServices): Iterable<Finding> {
    const { runs, recipes } = runsAndRecipesOf(document);
    for (const recipe of recipes) yield* issueKept(recipe, services);
    for (const recipe of new Set(runs.flatMap((run) => run.recipe?.ref ?? []))) yield* issueTwice(recipe, document, services);
}

function* issueKept(recipe: ast.Recipe, services: KerfServices): Iterable<Finding> {
    const line = issueOf(recipe);
    if (line === undefined) return;
    const runs = markedRuns(recipe, services);
    const day = runs.at(-1)?.run.date;
    const latest = runs.filter(({ run }) => run.date === day);
    if (latest.length === 0 || latest.some(({ issue }) => issue.value !== line.value)) return;
    const now = fingerprintOf(recipe);
    if (latest.some(({ mark }) => isSameMark(mark, now))) return;
    const next = nextIssue(line.value, runs);
    const where = whereOf(line);
    yield say('issue-kept', {
        severity: 'hint',
        message: phrase`\`${recipe.name}\` has changed since its run of ${day} and is still issue ${line.value}. Make it issue ${next}, so that an issue means one recipe.`,
        where,
        fixes: [replaceWith(where, `issue ${next}`, phrase`Change to issue ${next}`)],
    });
}

function* issueTwice(recipe: ast.Recipe, document: LangiumDocument, services: KerfServices): Iterable<Finding> {
    if (issueOf(recipe) === undefined) return;
    const runs = markedRuns(recipe, services);
    const known = new Map<number, Marked[]>();
    for (const each of runs) {
        const { value } = each.issue;
        const before = known.get(value) ?? [];
        known.set(value, before);
        if (before.some(({ mark }) => isSameMark(mark, each.mark))) continue;
        before.push(each);
        const [first] = before;
        if (first === undefined || first === each || AstUtils.getDocument(each.run) !== document) continue;
        const where = whereOf(each.issue);
        const next = nextIssue(value, runs);
        yield say('issue-twice', {
            severity: 'warning',
            message: phrase`The runs of ${first.run.date} and ${each.run.date} are both of issue ${value}, but \`${recipe.name}\` said something else for each. Give one of them another number, such as ${next}.`,
            where,
            related: [{ message: phrase`The other run is here.`, where: whereOfPart(first.run, 'date') }],
            fixes: [replaceWith(where, `issue ${next}`, phrase`Change to issue ${next}`)],
        });
    }
}

/** In the order of their days. */
function markedRuns(recipe: ast.Recipe, services: KerfServices): Marked[] {
    return runsOf(recipe, AstUtils.getDocument(recipe), services).flatMap((run) => {
        const mark = run.items.find(ast.isPlanOf)?.mark;
        const issue = issueOf(run);
        return mark === undefined || issue === undefined ? [] : [{ run, mark, issue }];
    });
}

function issueOf(block: ast.Recipe | ast.Run): ast.Count | undefined {
    return (block.items as readonly ast.RecipeItem[]).find(
        (item): item is ast.Count => ast.isCount(item) && item.key === 'issue' && Number.isInteger(item.value),
    );
}

function nextIssue(value: number, runs: readonly Marked[]): number {
    return Math.max(value, ...runs.map(({ issue }) => issue.value)) + 1;
}
