import { showNumber } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Laser } from '../../recipe/stock';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

/** Wavelengths in mm at which thin foil is cut rather than spared: fibre and similar sources around 1 um. */
const cutsFoil = { from: 0.8e-3, to: 3e-3 } as const;

const page: Page = {
    id: 'foil-and-fibre',
    title: 'Foil does not stop this beam',
    severities: ['error'],
    firm: 'always',
    condition: 'A blank backed with foil goes under a laser whose beam foil does not stop, such as a 1.06 µm fibre source.',
    error: 'Always: the foil cannot do what it is there for.',
    why: 'The foil is what keeps the loose parts in place and the beam out of what lies below. This beam goes through it, and throws molten metal and reflections about.',
    mend: 'Use a CO2 or a blue diode laser for the veneer half, or another way to hold the parts. The machine’s manual and the rules for its laser class come first.',
    source: 'Common practice, no source. Polished aluminium absorbs about 1.3 % at 10.6 µm, 8 % at 450 nm and 6 % at 1 µm (mirror maker’s note, seen), and a fibre source is far more tightly focused.',
};

export const foilAndFibre: Rule = {
    page,
    *examine(plan) {
        const machine = plan.recipe.laser;
        if (machine === undefined || foilHolds(machine)) return;
        const told = new Set<string>();
        for (const { step, blank: name, laser } of plan.steps) {
            const blank = plan.blanks.find((candidate) => candidate.name === name)?.blank;
            if (laser === undefined || blank?.backing !== 'foil' || told.has(blank.name)) continue;
            told.add(blank.name);
            const wavelength = machine.wavelength?.value ?? machine.beam?.wavelength?.value;
            const beam = wavelength === undefined ? machine.name : `${machine.name} (${showNumber(wavelength * 1000, 2)} µm)`;
            yield finding(page, {
                severity: 'error',
                firm: true,
                message: phrase`The foil behind ${blank.name} does not stop the beam of ${beam}; it stops that of a CO2 or a blue diode laser. Burn the veneer on such a laser.`,
                where: step.kind === 'engrave' || step.kind === 'cut' ? step.blank.where : step.where,
                step: step.index,
                related: [{ message: phrase`It is backed with foil here.`, where: blank.where }],
            });
        }
    },
};

function foilHolds({ beam, wavelength }: Laser): boolean {
    const length = wavelength?.value ?? beam?.wavelength?.value;
    if (length !== undefined && length >= cutsFoil.from && length <= cutsFoil.to) return false;
    return beam === undefined || beam.foilStops;
}
