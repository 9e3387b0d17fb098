import type { Severity } from '../recipe/finding';

/** A rule's explanation, written so that a maker learns the trade from it. Markdown is allowed in every field but the id. */
export interface Page {
    readonly id: string;
    readonly title: string;
    /** How grave its findings are, the usual first. */
    readonly severities: readonly Severity[];
    /** When it is an error and why nothing can come of it then; for every rule of the trade that gives errors. */
    readonly error?: string;
    /** Whether its findings come with a quick fix. */
    readonly quickFix?: 'always' | 'sometimes';
    /** Whether `allow` is kept from silencing it, since the numbers say that it goes wrong. */
    readonly firm?: 'always' | 'sometimes';
    /** When it shows. */
    readonly condition: string;
    /** What happens to the piece. */
    readonly why: string;
    readonly mend: string;
    /** Where the rule or its figure comes from, or "common practice, no source". */
    readonly source: string;
}

/** What the text editor says of a rule that can be allowed. The rest of its page is asked for by who wants to read it. */
export type PageHead = Pick<Page, 'id' | 'title' | 'condition'>;

export const plainFact = 'Plain fact of the files.';
export const commonPractice = 'Common practice, no source.';

export function pageText(page: Page): string {
    return [
        `# ${page.title}`,
        `\`${page.id}\``,
        `**When it shows.** ${page.condition}`,
        ...(page.error === undefined ? [] : [`**When it is an error.** ${page.error}`]),
        `**Why it matters.** ${page.why}`,
        `**How to mend it.** ${page.mend}`,
        `**Source.** ${page.source}`,
        '',
    ].join('\n\n');
}
