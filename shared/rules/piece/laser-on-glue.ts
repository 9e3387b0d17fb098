import { phrase } from '../../recipe/phrase';
import { faceAfter, nameOf, sizeOfMet } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'laser-on-glue',
    title: 'Laser on a glue that should not be burnt',
    severities: ['warning', 'info'],
    condition:
        'A cut or an engraving goes through the glue line of an inlay, and that glue is an epoxy or a polyurethane; a cyanoacrylate makes it a note.',
    why: 'Epoxy gives off vapours that harm and polyurethane hydrogen cyanide; cyanoacrylate stings eyes and lungs and burns. The film is thin, but a cut runs along it for its whole length.',
    mend: 'Do the laser’s work on that place before the inlay is glued in, keep off it, or glue with wood glue. If it must be, the glue’s data sheet, the machine’s manual and the extraction come first.',
    source: 'Epoxy and polyurethane are on a university’s list of what must not be put under a laser (seen); cyanoacrylate is from memory, so it is a note. That wood and hide glue may be burnt in so thin a film is common practice, no source.',
};

interface Danger {
    readonly severity: 'warning' | 'info';
    readonly vapour: string;
}

const dangers: Readonly<Record<string, Danger>> = {
    'epoxy-glue': { severity: 'warning', vapour: 'vapours that harm' },
    'polyurethane-glue': { severity: 'warning', vapour: 'hydrogen cyanide' },
    cyanoacrylate: { severity: 'info', vapour: 'vapour that stings eyes and lungs' },
};

export const laserOnGlue: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, laser } of plan.steps) {
            if (laser === undefined || blank === undefined) continue;
            const met = faceAfter(plan, step.index, blank)?.met ?? [];
            const laid = new Set(
                met.flatMap(({ layers }) => layers.flatMap(({ kind, step: by }) => (kind === 'glue' ? (by ?? []) : []))),
            );
            for (const index of laid) {
                const inlay = plan.steps[index]?.step;
                if (inlay?.kind !== 'inlay' || inlay.glue === undefined) continue;
                const { glue } = inlay;
                const danger = glue.kinds.map((kind) => dangers[kind]).find((known) => known !== undefined);
                const here = met.filter(({ layers }) => layers.some((layer) => layer.kind === 'glue' && layer.step === index));
                const { length, matters, shown } = sizeOfMet(here);
                if (danger === undefined || !matters) continue;
                yield finding(page, {
                    severity: danger.severity,
                    message: phrase`${nameOf(step)} burns ${shown} ${length > 0 ? 'along' : 'of'} the ${glue.name} below ${nameOf(inlay)}, which gives off ${danger.vapour}. Burn it before ${nameOf(inlay)} is glued in, keep off it, or use wood glue.`,
                    where: step.where,
                    step: step.index,
                    spots: spotsOf(
                        blank,
                        here.map(({ region }) => region),
                    ),
                    related: [{ message: phrase`${nameOf(inlay)} is glued in here.`, where: inlay.where }],
                    fixes: [],
                });
            }
        }
    },
};
