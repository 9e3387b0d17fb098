import { builtInText, builtInUris } from '../../language/built-in';
import { stockLines } from '../../language/stock-sources';
import { describeGrade } from '../../server/cli/stock';
import { stockGrades } from '../../server/cli/usage/reference-usages';

const titles: Readonly<Record<string, string>> = {
    abrasive: 'Abrasives',
    beam: 'Beams',
    finish: 'Finishes',
    glue: 'Glues',
    masking: 'Masks',
    resin: 'Resins',
    sealer: 'Sealers',
    wood: 'Woods',
};

/** The manual's page of the built-in stock, made from the stock itself: what `kerfbook stock --sources` says, as tables. */
export function stockPage(): string {
    const lines = stockLines(builtInUris.map((uri) => ({ path: uri, text: builtInText(uri) ?? '' })));
    const words = [...new Set(lines.map(({ of }) => of.split(' ')[0]!))];
    const chapters = words.flatMap((word) => {
        const of = lines.filter((line) => line.of.split(' ')[0] === word);
        const names = [...new Set(of.map((line) => line.of.split(' ')[1]!))];
        return [
            `## ${titleOf(word)}`,
            ...names.flatMap((name) => [
                `### ${name}`,
                [
                    '| line | how it is known |',
                    '| --- | --- |',
                    ...of.flatMap((line) => (line.of.split(' ')[1] === name ? [row(line.line, describeGrade(line))] : [])),
                ].join('\n'),
            ]),
        ];
    });
    const grades = Object.entries(stockGrades).map(([grade, what]) => `- *${grade}*: ${what}.`);
    return `${[
        '# Built-in stock',
        '<!-- Made from language/stock by `npm run words`; what is written here by hand is lost. -->',
        'Every recipe can use this by its name. What a shop declares itself goes before. Where your tin or its sheet says something else, write that.',
        'Each line says how it is known:',
        grades.join('\n'),
        ...chapters,
    ].join('\n\n')}\n`;
}

function row(line: string, how: string): string {
    const cell = (text: string) => text.replaceAll('|', '\\|').replaceAll('<', '&lt;');
    return `| \`${line.replaceAll('|', '\\|')}\` | ${cell(how)} |`;
}

function titleOf(word: string): string {
    const title = titles[word];
    if (title === undefined) throw new Error(`The page of the stock has no heading for ${word}.`);
    return title;
}
