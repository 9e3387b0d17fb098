import type { BlankPlan, Plan } from '../../plan/plan';
import type { Finding, Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Finish, Inlay } from '../../recipe/step';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'not-for-outdoors',
    title: 'Not made for outdoors',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition:
        'A blank is `kept outdoors`, and an inlay in it is glued with something, or its last coat is something, that does not last there by the stock (`weather fails`).',
    why: 'Damp softens white glue, and the inlay lifts; shellac turns white and cracks in the sun.',
    mend: 'Glue with epoxy, or with wood glue of class D3 under a roof and D4 under a coat in the rain, and say so of yours (`weather stands`). Finish with oil or varnish, and renew it; shellac may lie under them.',
    source: 'EN 204 as three sellers of glue print its classes D1 to D4 (seen); the standard itself was not opened. Shellac: a sheet on finishes for schools and a builders’ forum (seen). That epoxy joints last outdoors is common practice, no source.',
};

export const notForOutdoors: Rule = {
    page,
    *examine(plan) {
        for (const blank of plan.blanks) {
            if (blank.blank.kept?.value !== 'outdoors') continue;
            for (const { step, blank: of } of plan.steps) {
                if (step.kind === 'inlay' && of === blank.name && step.glue?.weather === 'fails')
                    yield said(blank, step, step.glue.name, otherGlue(step));
            }
            const last = lastCoat(plan, blank);
            if (last?.coat?.weather === 'fails') yield said(blank, last, last.coat.name, []);
        }
    },
};

function said({ name, blank }: BlankPlan, step: Finish | Inlay, what: string, fixes: Fix[]): Finding {
    return finding(page, {
        severity: 'warning',
        message: phrase`${name} is kept outdoors, where ${what} does not last${step.kind === 'inlay' ? phrase`: take epoxy, or wood glue of class D3 or D4` : phrase`: finish with oil or varnish`}.`,
        where: step.where,
        step: step.index,
        related: [{ message: phrase`It is kept outdoors, as is written here.`, where: blank.kept!.where }],
        fixes,
    });
}

function otherGlue({ glueWhere }: Inlay): Fix[] {
    if (glueWhere === undefined) return [];
    return [{ title: phrase`Glue with epoxy-glue`, changes: [{ do: 'replace', where: glueWhere, text: 'glue epoxy-glue' }] }];
}

/** The coat that the weather meets: wax over it wears off within weeks. */
function lastCoat({ steps }: Plan, { name }: BlankPlan): Finish | undefined {
    const last = steps.findLast(
        ({ step, blank }) => step.kind === 'finish' && blank === name && step.coat?.kinds.includes('wax') !== true,
    );
    return last?.step.kind === 'finish' ? last.step : undefined;
}
