import type { Memo } from '../plan/memo';
import type { Plan } from '../plan/plan';
import type { Finding } from '../recipe/finding';
import type { Blank } from '../recipe/recipe';
import { alignSteps } from './align-steps';
import { artFigures } from './art-difference';
import { numbered } from './change';
import { supplyFigures } from './compare-supplies';
import { drawnParts } from './drawn-parts';
import { type Amount, type Figure, word, worked } from './figure';
import { allowNotes, guesses } from './notes';
import { outcomes } from './outcomes';
import { costFigures, recipeFigures, runFigures, timeFigures } from './recipe-figures';
import { tell, writtenFigures } from './written';

/** Version of the JSON's shape: goes up when a reader would have to change. */
export const tableSchema = 1;

/** Recipes side by side: a column each, a row for each figure. Plain data; numbers in base units. */
export interface VariantTable {
    readonly schema: typeof tableSchema;
    readonly columns: readonly TableColumn[];
    readonly groups: readonly TableGroup[];
}

export interface TableColumn {
    readonly recipe: string;
    readonly title: string;
    /** The recipe right below it. */
    readonly base?: string;
}

export interface TableGroup {
    readonly title: string;
    readonly rows: readonly TableRow[];
}

export interface TableRow {
    readonly label: string;
    /** Written in the recipe, or worked out of it. */
    readonly kind: 'written' | 'follows';
    /** One for each column; null where that recipe has no such figure. */
    readonly cells: readonly (TableCell | null)[];
    readonly differs: boolean;
}

export interface TableCell {
    readonly text: string;
    readonly amount?: Amount;
}

/** One recipe with all that is to be told of it. */
export interface Planned {
    readonly plan: Plan;
    readonly findings: readonly Finding[];
}

/** @param all also the rows in which no recipe differs from another */
export function variantTable(planned: readonly Planned[], all: boolean, memo: Memo): VariantTable {
    const plans = planned.map(({ plan }) => plan);
    const groups = [
        group(
            'Recipe',
            planned.map(({ plan: { recipe } }) => recipeFigures(recipe).filter(({ label }) => !/^(name|title)$/.test(label))),
        ),
        ...namesOf(plans.map(({ recipe }) => recipe.blanks)).map((name) =>
            group(
                `Blank ${name}`,
                plans.map(({ recipe }) => blankFigures(recipe.blanks.find((blank) => blank.name === name))),
            ),
        ),
        ...namesOf(plans.map(({ recipe }) => recipe.arts)).map((name) =>
            group(
                `Art ${name}`,
                plans.map((plan) => {
                    const art = plan.recipe.arts.find((each) => each.name === name);
                    return art === undefined ? [] : artFigures(art, plan.arts.get(name));
                }),
            ),
        ),
        ...alignSteps(plans.map(({ recipe }) => recipe.steps)).map((row) => stepGroup(plans, row)),
        group(
            'For one piece',
            [],
            plans.map(({ totals }) => timeFigures(totals)),
        ),
        group('For all the pieces', [], plans.map(runFigures)),
        group(
            'To have on the bench',
            [],
            plans.map(({ supplies }) => supplyFigures(supplies)),
        ),
        group(
            'What it costs',
            [],
            plans.map(({ cost }) => costFigures(cost)),
        ),
        group(
            'Findings',
            [],
            planned.map((each) => findingFigures(each, memo)),
        ),
    ];
    return {
        schema: tableSchema,
        columns: plans.map(({ recipe: { name, title, base } }) => ({ recipe: name, title, ...(base && { base: base.name }) })),
        groups: groups
            .map(({ title, rows }) => ({ title, rows: rows.filter(({ differs }) => all || differs) }))
            .filter(({ rows }) => rows.length > 0),
    };
}

function namesOf(lists: readonly (readonly { readonly name: string }[])[]): string[] {
    return [...new Set(lists.flat().map(({ name }) => name))];
}

function stepGroup(plans: readonly Plan[], row: readonly (number | undefined)[]): TableGroup {
    const steps = plans.map((plan, column) => plan.steps[row[column] ?? -1]);
    const everywhere = steps.every((step) => step !== undefined);
    return group(
        steps.find((step) => step !== undefined)?.title ?? '',
        steps.map((step) =>
            step === undefined ? [] : [...(everywhere ? [] : [word('done', 'yes')]), ...writtenFigures(step.step)],
        ),
        steps.map((step, column) => (step === undefined ? [] : outcomes(step, plans[column]!, drawnParts))),
    );
}

/** A blank with what matters of the board or veneer that it is made of. */
function blankFigures(blank: Blank | undefined): Figure[] {
    if (blank === undefined) return [];
    const { sheet } = blank;
    const thickness = tell(sheet?.thickness);
    return [
        ...writtenFigures(blank),
        ...(sheet?.wood === undefined ? [] : [word('wood', sheet.wood.name)]),
        ...(thickness === undefined ? [] : [{ label: 'thickness', ...thickness }]),
    ];
}

function findingFigures({ plan, findings }: Planned, memo: Memo): Figure[] {
    const count = (label: string, number: number): Figure => worked(label, number, 'count');
    const of = (severity: Finding['severity']): number => findings.filter((finding) => finding.severity === severity).length;
    const rules = [...new Set(findings.map(({ rule }) => rule))].sort();
    return [
        count('errors', of('error')),
        count('warnings', of('warning')),
        count('notes', of('info') + of('hint')),
        count('allowed', allowNotes(plan).length),
        count('guessed settings', guesses(plan, memo).length),
        ...rules.map((rule) => count(rule, findings.filter((finding) => finding.rule === rule).length)),
    ];
}

/** Rows in the order of the first recipe that has them; what the others add comes behind. */
function group(title: string, written: readonly (readonly Figure[])[], follows: readonly (readonly Figure[])[] = []): TableGroup {
    return { title, rows: [...rowsOf(written, 'written'), ...rowsOf(follows, 'follows')] };
}

function rowsOf(columns: readonly (readonly Figure[])[], kind: TableRow['kind']): TableRow[] {
    const named = columns.map(numbered);
    return [...new Set(named.flatMap((column) => [...column.keys()]))].map((label) => {
        const figures = named.map((column) => column.get(label));
        return {
            label,
            kind,
            cells: figures.map((figure) =>
                figure === undefined ? null : { text: figure.text, ...(figure.amount && { amount: figure.amount }) },
            ),
            differs: new Set(figures.map((figure) => figure?.key)).size > 1,
        };
    });
}
