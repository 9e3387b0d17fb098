import type { FactView } from '../../../../shared/view/bench-view';

/** Looked up now and then; everything else stays in sight. */
const minor = new Set(['set-up', 'area', 'outline', 'dots', 'contrast', 'moves apart', 'of it each', 'clearance']);

export function isMajor({ label }: Pick<FactView, 'label'>): boolean {
    return !minor.has(label);
}

const meanings: Readonly<Record<string, string>> = {
    air: 'Whether the air nozzle at the beam is on',
    area: 'The part of the face that the beam passes over',
    clearance: 'How much larger than the relief the pocket is drawn all round',
    contrast: 'How far the burnt colour is from the one beside it (CIEDE2000): below about 10 it is hard to see',
    face: 'Which face of the blank is up',
    fit: 'How far the relief goes into its pocket, and how wide the gap round it is',
    focus: 'How far the lens stands from the face',
    kerf: 'How much wood the beam takes across a cut',
    'left after sanding': 'Veneer that is left once it is sanded down to the board',
    mind: 'What to watch for, though nothing is wrong with the recipe',
    mirror: 'Burnt as in a mirror, since the half is turned over',
    'moves apart': 'How far the two woods shrink and swell against each other over a year',
    outline: 'Length of all lines that the beam follows',
    'pot life': 'How long the mixed resin can be poured',
    'set-up': 'What lies on the bed of the laser, until it is taken off',
    settings: 'Power, speed, passes and distance between lines',
    'stands proud': 'How far the veneer stands above the board before it is sanded',
    tone: 'How dark it is burnt: 0 % is bare wood, 100 % the darkest it gets',
};

/** What a label means, for those who do not know the word; undefined where it speaks for itself. */
export function meaningOf(label: string): string | undefined {
    return Object.hasOwn(meanings, label) ? meanings[label] : undefined;
}
