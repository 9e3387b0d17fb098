import type { Where } from '../../quantity/where';
import type { Severity } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import { type Sheet, type Treatment, unnamedGlue } from '../../recipe/stock';
import { maskOn } from '../helpers/film-on';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'never-burn',
    title: 'A material that should not be burnt',
    severities: ['error', 'warning'],
    firm: 'sometimes',
    condition:
        'A sheet, or the masking on it, says by `made of` or `treated with`, or else by its name or that of its wood, that it may hold chlorine or other poisons, or that its glue or treatment is not known.',
    error: 'The material is known to give off poison, or nobody knows what it is treated with. Where a data sheet may allow it (glued boards, old paint), it is a warning.',
    why: 'PVC and vinyl give off hydrogen chloride, which harms lungs and eats the machine; ABS, polyurethane and wool give off hydrogen cyanide, PTFE worse. Treated wood may hold arsenic or copper, and boards are bound with glues that nobody names.',
    mend: 'Do not put it under the laser. If the name misleads, say what it is (`made of solid`, `treated with nothing`); of a glued or painted board whose maker’s data sheet says that it may be burnt, `allow never-burn because "…"` with that sheet’s number. What gives off poison cannot be allowed.',
    source: 'A university’s list of what must not be put under a laser (seen); treated wood, paint and glue from memory. Only what is written is looked at: silence here does not mean that a material may be burnt.',
};

const poisons: Readonly<Record<string, string>> = {
    pvc: 'hydrogen chloride',
    vinyl: 'hydrogen chloride',
    pvb: 'toxic vapours',
    leatherette: 'hydrogen chloride',
    abs: 'hydrogen cyanide',
    polyurethane: 'hydrogen cyanide',
    wool: 'hydrogen cyanide',
    ptfe: 'fluorine compounds',
    acetal: 'formaldehyde',
    polycarbonate: 'thick smoke and flames',
    polystyrene: 'flames',
    fibreglass: 'toxic vapours',
    fiberglass: 'toxic vapours',
};
/** Names of boards that are bound with glue, as they are used in the names of sheets. */
const glued: ReadonlySet<string> = new Set([...unnamedGlue, 'hdf', 'ply', 'particleboard']);
const treated = new Set(['treated', 'cca', 'creosote', 'impregnated']);

interface Danger {
    readonly severity: Severity;
    readonly message: string;
    /** The line that says it; absent where only the name does. */
    readonly where?: Where;
}

export const neverBurn: Rule = {
    page,
    *examine(plan) {
        const told = new Set<string>();
        for (const { step, blank: name, laser } of plan.steps) {
            const film = laser === undefined ? undefined : maskOn(plan, step, name)?.film;
            if (film?.madeOf?.value === 'pvc' && !told.has(film.name)) {
                told.add(film.name);
                yield finding(page, {
                    severity: 'error',
                    message: phrase`${film.name} must not be burnt: pvc gives off ${poisons.pvc}. Mask with paper.`,
                    where: step.where,
                    step: step.index,
                    related: [{ message: phrase`It is declared here.`, where: film.madeOf.where }],
                    firm: true,
                });
            }
            const blank = plan.blanks.find((candidate) => candidate.name === name)?.blank;
            const said = blank?.sheet === undefined ? undefined : dangerOf(blank.sheet);
            if (laser === undefined || blank?.sheet === undefined || said === undefined || told.has(blank.name)) continue;
            told.add(blank.name);
            yield finding(page, {
                severity: said.severity,
                message: phrase`${blank.sheet.name} ${said.message}`,
                where: step.kind === 'engrave' || step.kind === 'cut' ? step.blank.where : step.where,
                step: step.index,
                related: [{ message: phrase`It is declared here.`, where: said.where ?? blank.sheet.where }],
                // No reason makes poison good to breathe; a name that misleads is set right by `made of`.
                firm: said.severity === 'error',
            });
        }
    },
};

/** What a sheet says it is made of and treated with warns of, else its name and that of its wood; silence does not mean that it may be burnt. */
export function dangerOf(sheet: Sheet): Danger | undefined {
    const { madeOf, treatedWith } = sheet;
    const said = [
        ...(treatedWith === undefined ? [] : [ofTreatment(treatedWith)]),
        ...(madeOf === undefined ? [] : [ofMaterial(madeOf.value, madeOf.where)]),
        ...wordsOf(sheet).map((word) => {
            if (treatedWith === undefined && treated.has(word)) return ofTreatment({ value: 'preservative' });
            return madeOf === undefined ? ofMaterial(word) : undefined;
        }),
    ].flatMap((danger) => danger ?? []);
    return said.find(({ severity }) => severity === 'error') ?? said[0];
}

function wordsOf({ name, wood }: Sheet): string[] {
    return `${name} ${wood?.name ?? ''}`.toLowerCase().split(/[^a-z]+/);
}

function ofMaterial(word: string, where?: Where): Danger | undefined {
    const place = where === undefined ? {} : { where };
    const poison = Object.hasOwn(poisons, word) ? poisons[word] : undefined;
    if (poison !== undefined)
        return {
            severity: 'error',
            message: phrase`must not be burnt: ${word} gives off ${poison}. Take another material.`,
            ...place,
        };
    if (!glued.has(word)) return undefined;
    return {
        severity: 'warning',
        message: phrase`is bound with glue: burn it only if its maker’s data sheet says that it may be.`,
        ...place,
    };
}

function ofTreatment({ value, where }: { readonly value: Treatment; readonly where?: Where }): Danger | undefined {
    const place = where === undefined ? {} : { where };
    switch (value) {
        case 'nothing':
            return undefined;
        case 'paint':
            return {
                severity: 'warning',
                message: phrase`is painted: burn it only if the paint’s data sheet says that it may be; old paint may hold lead.`,
                ...place,
            };
        case 'unknown':
            return {
                severity: 'error',
                message: phrase`must not be burnt: nobody knows what it is treated with. Find out and write it, or take another board.`,
                ...place,
            };
        default:
            return {
                severity: 'error',
                message: phrase`must not be burnt: what it is treated with is poisonous as smoke. Take untreated wood.`,
                ...place,
            };
    }
}
