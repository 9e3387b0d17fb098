import { readFileSync } from 'node:fs';

const read = (file: string): string => readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8');
const texts = JSON.parse(read('extension/l10n/package.nls.json')) as Readonly<Record<string, string>>;
/** The manifest as the editor reads it, its texts in place of their keys. */
const manifest = JSON.parse(read('package.json'), (_name, value) =>
    typeof value === 'string' ? value.replace(/^%(.+)%$/, (_whole, key: string) => texts[key]!) : value,
);
const { commands, keybindings, configuration } = manifest.contributes as Contributes;

interface Contributes {
    readonly commands: readonly { readonly command: string; readonly title: string }[];
    readonly keybindings: readonly { readonly command: string; readonly key: string; readonly mac?: string }[];
    readonly configuration: { readonly properties: Readonly<Record<string, Setting>> };
}

interface Setting {
    readonly description: string;
    readonly default: unknown;
    readonly enum?: readonly string[];
    readonly enumDescriptions?: readonly string[];
}

/** What each command does, for those who have not met it; a command without its line is a fault. */
const does: Readonly<Record<string, string>> = {
    newRecipe: 'asks for technique, board, laser, art and name, tries the recipe out and writes it',
    copySamples: 'copies a folder of recipes, art and stock, and opens one with its bench view',
    newRecipeFromArt: 'the same as *New Recipe*, from a drawing or picture in the explorer',
    openBenchView: 'the [bench view](bench-view.md) in place of the text',
    openBenchViewToSide: 'the bench view beside the text',
    pressHalves: 'lays both burnt surfaces of an [inlay](inlay.md) over each other in the computer',
    writeFiles: 'drawings, [machine files](machine.md), job sheet and shopping list into `made`',
    makeCoupon: 'a [ladder of squares](coupon.md) to burn and measure',
    addMeasuredSquares: 'asks square by square what was measured',
    compareWithCommitted: 'what differs from the [last commit](review.md#in-the-editor), and what follows',
    compareWithRevision: 'the same, with a commit, branch or tag that you choose',
    compareSelected: 'two recipe files that are selected in the explorer',
    compareVariants: 'a recipe and its [variants](variants.md), a column each',
    showHistory: '[runs](checklist.md) beside what was planned',
    showWeek: 'all that is [ordered](week.md), or all recipes, in one book',
    showSeason: 'what [runs](week.md#the-season) made, spoiled, took and cost',
    refreshPage: 'works the page in front out again',
    explainFinding: 'the page of the [rule](rules.md) under the cursor',
    chooseRecipe: 'which recipe bench view, checklist and commands are about',
    pinRecipe: 'holds that recipe, wherever the cursor goes',
    unpinRecipe: 'lets it follow the cursor again',
    resetChecklist: 'takes all ticks away',
    finishRun: 'writes what was ticked and measured into a run',
    takeInRun: 'puts a run that was saved on a tablet beside the others of the recipe',
    tickStep: 'ticks the chosen step of the checklist, or takes the tick back',
    measureStep: 'asks again what a check measured',
    measureAndGoOn: 'asks how deep a burn of several passes is after some of them, and plans the rest for what is left',
    goToStep: 'from the checklist to the text',
    openWalkthrough: 'the seven steps for beginners',
    openGuide: 'chooses a page of this manual',
    openManual: 'this manual, at the word under the cursor',
    restartServer: 'begins the language server again, should it be stuck',
};

/** The manual's page of commands, keys and settings, made from the extension's manifest. */
export function settingsPage(): string {
    return [
        '# Settings, commands and keys',
        '',
        '<!-- Made from package.json by `npm run commands`; what is written here by hand is lost. -->',
        '',
        'Commands are in the palette (`F1`) and begin with *Kerfbook:*. Keys can be changed in *Preferences: Open Keyboard Shortcuts*.',
        '',
        '## Commands',
        '',
        '| command | what it does | key |',
        '| --- | --- | --- |',
        ...commands.map((each) => `| *${each.title}* | ${whatOf(each.command)} | ${keyOf(each.command)} |`),
        '',
        'Keys inside the bench view are on [its page](bench-view.md#keys).',
        '',
        '## Settings',
        '',
        '| setting | what it decides | if left out |',
        '| --- | --- | --- |',
        ...Object.entries(configuration.properties).map(
            ([name, setting]) => `| \`${name}\` | ${setting.description}${choicesOf(setting)} | \`${setting.default}\` |`,
        ),
        '',
        'Hints beside the text are switched by the editor’s own `editor.inlayHints.enabled`. Layout on saving is `editor.formatOnSave`.',
        '',
        '## Tasks',
        '',
        '*Terminal: Run Task* has `kerfbook: check`, which looks at every recipe of the folder, and `kerfbook: build`, which writes their files. In `tasks.json`:',
        '',
        '```json',
        '{ "type": "kerfbook", "task": "check", "strict": true }',
        '```',
        '',
    ].join('\n');
}

function whatOf(command: string): string {
    const what = does[command.replace('kerfbook.', '')];
    if (what === undefined) throw new Error(`tests/kit/settings-page.ts does not say what ${command} does`);
    return what;
}

function keyOf(command: string): string {
    return keybindings
        .filter((each) => each.command === command)
        .map(({ key, mac }) => [spoken(key), ...(mac === undefined ? [] : [`on a Mac ${spoken(mac)}`])].join(', '))
        .join('; ');
}

function spoken(key: string): string {
    return key
        .split(' ')
        .map((stroke) =>
            stroke
                .split('+')
                .map((part) => part.charAt(0).toUpperCase() + part.slice(1))
                .join('+'),
        )
        .join(' ');
}

function choicesOf({ enum: values, enumDescriptions }: Setting): string {
    if (values === undefined) return '';
    return ` ${values.map((value, index) => `\`${value}\`${enumDescriptions === undefined ? '' : `: ${enumDescriptions[index]}`}`).join(enumDescriptions === undefined ? ', ' : ' ')}`;
}
