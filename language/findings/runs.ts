import { AstUtils, type LangiumDocument, UriUtils } from 'langium';
import { showQuantity } from '../../shared/quantity/show';
import type { Finding, Fix } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import * as ast from '../generated/ast';
import { isDay } from '../lowering/day';
import { lowerFile } from '../lowering/lower-file';
import { whereOf, whereOfFirstWord, whereOfPart } from '../lowering/places';
import { quantityOf } from '../lowering/quantity';
import { lastDepth } from '../lowering/runs';
import { filesAround, isSeen, runsAndRecipesOf, runsOf } from '../names/runs-in-sight';
import type { KerfServices } from '../services';
import { removal, say } from './say';
import { writtenForm } from './written-form';

/** What is wrong with the runs of a file beyond their single lines: where they stand, their days, figures that contradict each other. */
export function* runFindings(document: LangiumDocument, services: KerfServices): Iterable<Finding> {
    for (const run of runsAndRecipesOf(document).runs) {
        yield* dayFinding(run, services.outside.today());
        const recipe = run.recipe?.ref;
        if (recipe === undefined) continue;
        const home = AstUtils.getDocument(recipe);
        yield* placeFindings(run, recipe, { document, home }, services);
        yield* sameRun(run, recipe, home, services);
        yield* twoFigures(run);
        yield* depthsOfPasses(run);
        yield* depthsOfTones(run, recipe, home, services);
    }
}

/** Days are compared as they are written; a day of another zone may be one ahead, which is why only what is later still is said. */
function* dayFinding(run: ast.Run, today: string | undefined): Iterable<Finding> {
    const { date } = run;
    if (today === undefined || date === undefined || !isDay(date) || date <= today) return;
    yield say('run-ahead', {
        severity: 'warning',
        message: phrase`${date} is still to come: today is ${today}. Write the day on which it was made.`,
        where: whereOfPart(run, 'date'),
    });
}

interface Files {
    readonly document: LangiumDocument;
    readonly home: LangiumDocument;
}

function* placeFindings(run: ast.Run, recipe: ast.Recipe, { document, home }: Files, services: KerfServices): Iterable<Finding> {
    if (home === document) return;
    const nameOf = (other: LangiumDocument): string => `"${UriUtils.relative(UriUtils.dirname(document.uri), other.uri)}"`;
    const where = whereOfPart(run, 'recipe');
    if (!isSeen(document, home, services)) {
        const message = phrase`This run does not count: it stands outside of the folder of ${nameOf(home)}. Move its file into that folder, or below it.`;
        yield say('run-elsewhere', { severity: 'warning', message, where });
    }
    if (services.names.UsedFiles.of(document).some((used) => used.document === home)) return;
    const folder = UriUtils.dirname(home.uri).toString();
    const other = filesAround(document.uri, services.shared.workspace.LangiumDocuments).find(
        (each) =>
            each !== home &&
            UriUtils.dirname(each.uri).toString() === folder &&
            runsAndRecipesOf(each).recipes.some(({ name }) => name === recipe.name),
    );
    if (other === undefined) return;
    const message = phrase`${nameOf(home)} and ${nameOf(other)} both have a recipe \`${recipe.name}\`; the one of ${nameOf(home)} is meant. Write \`use\` with the file that is meant at the top of this one.`;
    yield say('duplicate-name', { severity: 'warning', message, where });
}

/** The second of two that say the same of the same day: a copied file, or a merge that kept both sides. */
function* sameRun(run: ast.Run, recipe: ast.Recipe, home: LangiumDocument, services: KerfServices): Iterable<Finding> {
    if (run.items.length === 0) return;
    const form = writtenForm(run.$cstNode);
    const first = runsOf(recipe, home, services).find((each) => each.date === run.date && writtenForm(each.$cstNode) === form);
    if (first === undefined || first === run) return;
    yield say('run-twice', {
        severity: 'warning',
        message: phrase`This run of ${run.date} is written twice, so its figures count twice. Remove one; if both were made, say in a \`note\` which is which.`,
        where: whereOfPart(run, 'date'),
        related: [{ message: phrase`It stands here, too.`, where: whereOfPart(first, 'date') }],
        fixes: [removal(whereOf(run), phrase`Remove this run`)],
    });
}

function* twoFigures(run: ast.Run): Iterable<Finding> {
    const seen = new Map<string, ast.Burnt>();
    for (const line of run.items.filter(ast.isBurnt)) {
        for (const what of ['depth', 'width'] as const) {
            const now = quantityOf(measured(line, what));
            const step = line.step?.ref;
            if (now === undefined || step === undefined) continue;
            const key = `${what} ${step.name} ${line.sheet?.$refText ?? ''}`;
            const before = seen.get(key);
            const earlier = before && quantityOf(measured(before, what));
            if (before === undefined || earlier === undefined) {
                seen.set(key, line);
                continue;
            }
            yield say('run-figures', {
                severity: 'warning',
                message: phrase`\`${step.name}\` has two figures for its ${what} in one run: ${showQuantity(earlier)} and ${showQuantity(now)}. Remove the one that is wrong; what was burnt a second time is a run of its own.`,
                where: whereOf(measured(line, what)),
                related: [{ message: phrase`The other one stands here.`, where: whereOf(measured(before, what)) }],
                fixes: [before, line].map((each) =>
                    removal(whereOf(each), phrase`Remove the line with ${showQuantity(each === line ? now : earlier)}`),
                ),
            });
        }
    }
}

function measured(line: ast.Burnt, what: 'depth' | 'width'): ast.Quantity | undefined {
    return what === 'depth' ? lastDepth(line) : line.widths[0];
}

/** Depths after each pass: no more of them than passes, and none less deep than the one before it. */
function* depthsOfPasses(run: ast.Run): Iterable<Finding> {
    for (const line of run.items.filter(ast.isBurnt)) {
        if (line.depths.length < 2) continue;
        const passes = line.power === undefined ? undefined : (line.passes ?? 1);
        if (passes !== undefined && line.depths.length > passes) {
            yield say('run-figures', {
                severity: 'warning',
                message: phrase`There are ${line.depths.length} depths after ${passes} ${passes === 1 ? 'pass' : 'passes'}: write how many passes there were, such as \`x ${line.depths.length}\`, or the last depth alone.`,
                where: whereOf(line.depths[passes]),
                fixes: [keepLast(line)],
            });
        }
        const read = line.depths.map(quantityOf);
        for (const [index, now] of read.entries()) {
            const before = read[index - 1];
            if (now === undefined || before === undefined || now.value >= before.value) continue;
            yield say('run-figures', {
                severity: 'warning',
                message: phrase`After this pass it was less deep than before it: ${showQuantity(now)}, and ${showQuantity(before)} before. Measure again, or write the depths in the order of the passes.`,
                where: whereOf(line.depths[index]),
                fixes: [keepLast(line)],
            });
            break;
        }
    }
}

function keepLast(line: ast.Burnt): Fix {
    const [first, last] = [whereOf(line.depths[0]), whereOf(lastDepth(line))];
    return {
        title: phrase`Keep the last depth alone`,
        changes: [{ do: 'replace', where: { ...first, length: last.offset - first.offset }, text: '' }],
    };
}

function* depthsOfTones(run: ast.Run, recipe: ast.Recipe, home: LangiumDocument, services: KerfServices): Iterable<Finding> {
    const lines = run.items.filter(ast.isBurnt).filter((line) => lastDepth(line) !== undefined && line.step?.ref !== undefined);
    if (lines.length === 0) return;
    const steps = lowerFile(home, services).find(
        ({ name, whole }) => name === recipe.name && whole.offset === recipe.$cstNode?.offset,
    )?.steps;
    for (const line of lines) {
        const step = steps?.find((each) => each.kind === 'engrave' && each.name === line.step.ref?.name);
        if (step?.kind !== 'engrave' || step.tone === undefined || step.depth !== undefined) continue;
        yield say('run-depth-of-tone', {
            severity: 'warning',
            message: phrase`\`${step.name}\` is burnt to a tone, so this depth is held against nothing and left out of the fit. Remove it, or give the step a \`depth\`.`,
            where: whereOf(lastDepth(line)),
            related: [{ message: phrase`The step is written here.`, where: whereOfFirstWord(line.step.ref!) }],
        });
    }
}
