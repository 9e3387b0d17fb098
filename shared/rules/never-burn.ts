import type { Severity } from '../recipe/finding';
import type { Sheet } from '../recipe/stock';
import type { Page } from './page';
import { finding, type Rule } from './rule';

const page: Page = {
    id: 'never-burn',
    title: 'A material that should not be burnt',
    severities: ['error', 'warning'],
    condition:
        'The name of a sheet or of its wood says that it may hold chlorine or other poisons, or that its glue or treatment is not known.',
    why: 'PVC and vinyl give off hydrogen chloride, which harms lungs and eats the machine; ABS, polyurethane and wool give off hydrogen cyanide, PTFE worse. Treated wood may hold arsenic or copper, and boards are bound with glues that nobody names.',
    mend: 'Do not put it under the laser. If the name misleads, rename the sheet; if the maker’s data sheet says that it may be burnt, `allow never-burn because "…"` with that sheet’s number.',
    source: 'A university’s list of what must not be put under a laser (seen); treated wood from memory. A name is all that is looked at: silence here does not mean that a material may be burnt.',
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
const unknownGlue = new Set(['mdf', 'hdf', 'osb', 'plywood', 'ply', 'chipboard', 'particleboard', 'hardboard']);
const treatments = new Set(['treated', 'cca', 'creosote', 'impregnated']);

export const neverBurn: Rule = {
    page,
    *examine(plan) {
        const told = new Set<string>();
        for (const { step, blank: name, laser } of plan.steps) {
            const blank = plan.blanks.find((candidate) => candidate.name === name)?.blank;
            const said = blank?.sheet === undefined ? undefined : dangerOf(blank.sheet);
            if (laser === undefined || blank?.sheet === undefined || said === undefined || told.has(blank.name)) continue;
            told.add(blank.name);
            yield finding(page, {
                severity: said.severity,
                message: `${blank.sheet.name} ${said.message}`,
                where: step.kind === 'engrave' || step.kind === 'cut' ? step.blank.where : step.where,
                step: step.index,
                related: [{ message: 'It is declared here.', where: blank.sheet.where }],
            });
        }
    },
};

/** What the name of a sheet or of its wood warns of; silence does not mean that it may be burnt. */
export function dangerOf(sheet: Sheet): { severity: Severity; message: string } | undefined {
    for (const word of `${sheet.name} ${sheet.wood?.name ?? ''}`.toLowerCase().split(/[^a-z]+/)) {
        const poison = Object.hasOwn(poisons, word) ? poisons[word] : undefined;
        if (poison !== undefined) {
            return { severity: 'error', message: `must not be burnt: ${word} gives off ${poison}.` };
        }
        if (treatments.has(word))
            return { severity: 'error', message: 'must not be burnt: what it is treated with is poisonous as smoke.' };
        if (unknownGlue.has(word)) {
            return {
                severity: 'warning',
                message: 'is bound with glue: burn it only if its maker’s data sheet says that it may be.',
            };
        }
    }
    return undefined;
}
