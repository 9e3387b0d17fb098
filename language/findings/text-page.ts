import type { Page } from '../../shared/rules/page';

const ours = 'The language itself.';

type Answer = Pick<Page, 'severities' | 'quickFix'>;

export const error: Answer = { severities: ['error'] };
export const warning: Answer = { severities: ['warning'] };
export const hint: Answer = { severities: ['hint'] };

export function mendable(answer: Answer, quickFix: Page['quickFix'] = 'always'): Answer {
    return { ...answer, ...(quickFix && { quickFix }) };
}

/** A page of a rule about the text. */
export function page(id: string, answer: Answer, title: string, condition: string, why: string, mend: string): Page {
    return { id, title, ...answer, condition, why, mend, source: ours };
}
