import { textPages } from '../../language/findings/pages';
import { isAllowable } from '../../server/is-allowable';
import { ruleFamilies } from '../../shared/rules/all-rules';
import { allowPage } from '../../shared/rules/allow-silences-nothing';
import { couponRules } from '../../shared/rules/coupon/examine-coupons';
import type { Page } from '../../shared/rules/page';

interface Family {
    readonly title: string;
    readonly pages: readonly Page[];
}

const families: readonly Family[] = [
    ...ruleFamilies.map(({ title, rules }) => ({ title, pages: rules.map(({ page }) => page) })),
    { title: 'Coupons', pages: couponRules.map(({ page }) => page) },
    { title: 'The text', pages: [...textPages, allowPage] },
];

/** The list of rules for users, as extension/docs/rules.md holds it: all of it is said by the rules' own pages. */
export function rulesPage(): string {
    return `${[introduction, ...families.map(contents), errors(), ...families.flatMap(chapter)].join('\n\n')}\n`;
}

function errors(): string {
    const rows = families.flatMap(({ pages }) =>
        pages.flatMap(({ id, error }) => (error === undefined ? [] : [`| [${id}](#${id}) | ${error} |`])),
    );
    return [
        '## What is an error, and why',
        'An error stands for what cannot succeed: `kerfbook check` fails by it. What may still come out well is a warning.',
        ['| rule | error |', '| --- | --- |', ...rows].join('\n'),
    ].join('\n\n');
}

const introduction = `# What Kerfbook notices

<!-- Made from the rules' own pages by \`npm run rules\`; a test fails where the two differ. -->

Each finding ends with its rule's name, and *Explain* (the light bulb) shows what stands here. How grave it is:

- **error**: the piece would be ruined, or a line cannot be understood;
- **warning**: it goes wrong more often than not;
- **info**: worth knowing before the laser runs;
- **hint**: it could be done better.

The gravest is read first. What follows from another finding stands under it and is gone with it.

A rule marked *allow* can be silenced where you know better, in one step or in a whole recipe, with the reason beside it:
\`allow thin-floor because "the tray hangs on a wall"\`. The others can only be mended. *Quick fix* means that the light bulb writes the change.
Silence promises nothing: what is not written in a recipe is not looked at. Local codes, makers' manuals and licensed practice come first.`;

function contents({ title, pages }: Family): string {
    const rows = pages.map(
        (page) => `| [${page.id}](#${page.id}) | ${page.title} | ${page.severities[0]} | ${marks(page).join(', ')} |`,
    );
    return [
        `**[${title}](#${anchor(title)})**`,
        ['| rule | | usually | |', '| --- | --- | --- | --- |', ...rows].join('\n'),
    ].join('\n\n');
}

function chapter({ title, pages }: Family): string[] {
    return [`## ${title}`, ...pages.flatMap(entry)];
}

function entry(page: Page): string[] {
    const [usual, ...others] = page.severities;
    const grave = others.length === 0 ? usual : `${usual}, at times ${others.join(' or ')}`;
    return [
        `### ${page.id}`,
        `**${page.title}** · ${[grave, ...marks(page)].join(' · ')}`,
        [
            `- *When it shows.* ${page.condition}`,
            ...(page.error === undefined ? [] : [`- *When it is an error.* ${page.error}`]),
            `- *Why it matters.* ${page.why}`,
            `- *How to mend it.* ${page.mend}`,
            `- *Source.* ${page.source}`,
        ].join('\n'),
    ];
}

function marks({ id, quickFix, firm }: Page): string[] {
    const fix = { always: ['quick fix'], sometimes: ['quick fix at times'], never: [] }[quickFix ?? 'never'];
    const allow = { always: [], sometimes: ['allow at times'], never: ['allow'] }[firm ?? 'never'];
    return [...fix, ...(isAllowable(id) ? allow : [])];
}

/** As Markdown viewers make it of a heading. */
function anchor(heading: string): string {
    return heading.toLowerCase().replaceAll(' ', '-');
}
