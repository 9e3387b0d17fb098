import tabletScript from 'tablet-script';
import { contentKey } from '../../shared/plan/content-key';
import { depthAims } from '../../shared/plan/depth-aims';
import { KeptOn } from '../../shared/plan/kept';
import { makePlan } from '../../shared/plan/make-plan';
import { Memo } from '../../shared/plan/memo';
import type { ArtState, Plan } from '../../shared/plan/plan';
import { pressAll } from '../../shared/plan/plan-press';
import { allTrades } from '../../shared/plan/plan-trade';
import { isoMoment } from '../../shared/quantity/calendar';
import type { Finding } from '../../shared/recipe/finding';
import type { Recipe } from '../../shared/recipe/recipe';
import { comparePlans, type Version } from '../../shared/review/compare-plans';
import { drawnParts } from '../../shared/review/drawn-parts';
import { reviewPictures } from '../../shared/review/film-strip';
import { reviewBody } from '../../shared/review/html/as-html';
import { tableBody } from '../../shared/review/html/table';
import { reviewNotes } from '../../shared/review/notes';
import { planSummary } from '../../shared/review/plan-summary';
import { type VariantTable, variantTable } from '../../shared/review/variant-table';
import { examine, type Glance, glanceAt, silencedIn } from '../../shared/rules/examine';
import { buildSheets, type Sheets } from '../../shared/sheets/build-sheets';
import { laidSheets } from '../../shared/sheets/laid-sheets';
import { planJson } from '../../shared/sheets/plan-json';
import { tabletPage } from '../../shared/tablet/tablet-page';
import type { SectionView } from '../../shared/view/bench-view';
import { columnWords } from '../../shared/view/column-words';
import { makeBenchView } from '../../shared/view/make-bench-view';
import { makeChecklist } from '../../shared/view/make-checklist';
import { makeRoundView } from '../../shared/view/make-round-view';
import { makeStepFigures } from '../../shared/view/make-step-figures';
import { makePressView } from '../../shared/view/press-view';
import { makeRunFigures } from '../../shared/view/run-figures';
import { sectionView } from '../../shared/view/section-view';
import { type SentPicture, sentPicture } from '../../shared/view/sent-picture';
import { toolpathView } from '../../shared/view/toolpath-view';
import { bookedPlan } from '../../shared/week/booked-plan';
import { seasonBody } from '../../shared/week/html/season-page';
import { weekBody } from '../../shared/week/html/week-page';
import { makeWeek } from '../../shared/week/make-week';
import { makeSeason } from '../../shared/week/season';
import type { Week } from '../../shared/week/week';
import { answerHistory } from './answer-history';
import { answerPlain, isPlain } from './answer-plain';
import { editorLinks } from './editor-links';
import type {
    Answers,
    AnswerTo,
    ArtFile,
    BenchJob,
    BuildJob,
    Job,
    OnePlanJob,
    ReviewAnswer,
    ReviewJob,
    ReviewPageJob,
    SectionJob,
    TableJob,
    VersionAsked,
    WeekJob,
} from './jobs';
import { readArt } from './read-art';
import { reviewInBrief } from './review-in-brief';

/**
 * Works jobs off, one at a time, and keeps what it has worked out. The same class runs in the
 * worker of the language server and in the command line, so that both say the same.
 */
export class PlanEngine {
    private readonly memo: Memo;
    private readonly files = new Map<string, ArtFile>();
    /** The last plan, since the same recipe is mostly asked about several times: for the picture, the findings, the checklist. */
    private last: { readonly key: string; readonly plan: Plan } | undefined;
    private readonly examined = new KeptOn<Plan, readonly Finding[]>();

    /**
     * @param checkpoint called with the name of each stage before it; may throw Cancelled to give a job up
     * @param tell called with the part of a long stage that is done
     */
    constructor(
        private readonly checkpoint: (stage: string) => void = () => {},
        private readonly tell: (part: number) => void = () => {},
    ) {
        this.memo = new Memo(64, checkpoint);
    }

    setArt(file: ArtFile): void {
        this.files.set(file.uri, file);
    }

    run<J extends Job>(job: J): AnswerTo<J> {
        return this.answer(job) as AnswerTo<J>;
    }

    private answer(job: Job): Answers[keyof Answers] {
        if (isPlain(job)) return answerPlain(job);
        if (job.do === 'review-page') return this.reviewPage(job);
        if ('columns' in job) return this.table(job);
        if ('entries' in job) return this.week(job);
        if ('runs' in job) return job.do === 'season' ? makeSeason(job.runs) : seasonBody(makeSeason(job.runs));
        if ('past' in job) return answerHistory(job, this.memo);
        if (job.do === 'review') return reviewInBrief(job, this.files, this.memo) ?? this.review(job, this.plan(job.recipe));
        return this.answerOf(this.plan(startingOn(job.recipe, 'start' in job ? job.start : undefined)), job);
    }

    private build(plan: Plan, { textFindings, start, mark, laid }: BuildJob): Sheets {
        if (laid !== undefined) return laidSheets(plan, laid, this.memo);
        const { files, problems } = buildSheets(plan, this.all(plan, textFindings), this.memo, start);
        return { files: [...files, tabletPage(plan, tabletScript, mark)], problems };
    }

    /** The picture, at once or with its fixes tried out. */
    private picture(plan: Plan, { textFindings, setting, had, soon = false }: BenchJob): SentPicture {
        const { findings, trying } = soon ? this.glance(plan) : { findings: this.findings(plan), trying: [] };
        const around = { ...setting, trades: !soon, ...(trying.length > 0 && { trying }) };
        return sentPicture(makeBenchView(plan, [...textFindings, ...findings], around, this.memo, had), had);
    }

    private glance(plan: Plan): Glance {
        const known = this.examined.get(plan);
        if (known !== undefined) return { findings: known, trying: [] };
        const glance = glanceAt(plan);
        if (glance.trying.length === 0) this.examined.set(plan, glance.findings);
        return glance;
    }

    /** What is asked of one plan. */
    private answerOf(plan: Plan, job: OnePlanJob): Answers[keyof Answers] {
        switch (job.do) {
            case 'examine':
                return this.findings(plan);
            case 'survey':
                return { findings: this.findings(plan), figures: makeStepFigures(plan), run: makeRunFigures(plan) };
            case 'bench':
                return this.picture(plan, job);
            case 'checklist':
                return makeChecklist(plan);
            case 'build':
                return this.build(plan, job);
            case 'json':
                return planJson(plan, this.all(plan, job.textFindings), {
                    ...job,
                    presses: pressAll(plan, this.memo),
                    trades: allTrades(plan, this.memo),
                });
            case 'booked':
                return bookedPlan(plan);
            case 'aims':
                return depthAims(plan, job.sheet, job.laser, this.memo) ?? null;
            case 'summary':
                return planSummary(plan, job.all);
            case 'notes':
                return { notes: reviewNotes(plan, this.memo), silenced: silencedIn(plan) };
            case 'toolpath':
                return toolpathView(plan, job.step, this.memo) ?? null;
            case 'press':
                return (
                    makePressView(plan, job.step, this.memo, (part) => {
                        this.checkpoint('press');
                        this.tell(part);
                    }) ?? null
                );
            case 'column':
                return columnWords(plan, job.frame, job.blank, job.x, job.y) ?? null;
            case 'section':
                return sectionAt(plan, job);
            case 'round':
                return makeRoundView(plan, job.frame, job.blank, this.memo, {
                    hidden: job.hidden,
                    checkpoint: () => this.checkpoint('round'),
                });
        }
    }

    private reviewPage({ reviews }: ReviewPageJob): string {
        const answers = reviews.map((each) => this.review(each, this.plan(each.recipe)));
        this.checkpoint('picture');
        return reviewBody(answers, editorLinks);
    }

    private table({ do: what, columns, all }: TableJob): VariantTable | string {
        const planned = columns.map(({ recipe, textFindings }) => {
            const plan = this.plan(recipe);
            return { plan, findings: this.all(plan, textFindings) };
        });
        const table = variantTable(planned, all, this.memo);
        if (what === 'table') return table;
        return tableBody(
            table,
            editorLinks,
            columns.map(({ recipe }) => recipe.where),
        );
    }

    private week(job: WeekJob): Week | string {
        this.checkpoint('week');
        const week = makeWeek(job.entries, job, job.spent, this.memo);
        return job.do === 'week' ? week : weekBody(week);
    }

    private review(job: ReviewJob, plan: Plan): ReviewAnswer {
        const arts = new Map(job.before.arts.map((file) => [file.uri, file]));
        const before = this.version(job.before, this.plan(job.before.recipe, arts));
        const after = this.version(job, plan);
        const comparison = comparePlans(before, after, this.memo, drawnParts);
        const { review, places } = comparison;
        if (!job.pictures) return { review, places };
        return { review, places, pictures: reviewPictures(before, after, comparison, this.memo) };
    }

    private version({ from, exists, textFindings }: VersionAsked, plan: Plan): Version {
        return { from, exists, plan, findings: this.all(plan, textFindings) };
    }

    private all(plan: Plan, textFindings: readonly Finding[]): readonly Finding[] {
        return [...textFindings, ...this.findings(plan)];
    }

    private findings(plan: Plan): readonly Finding[] {
        return this.examined.getOr(plan, () => examine(plan, undefined, () => this.checkpoint('fixes')));
    }

    private plan(recipe: Recipe, files: ReadonlyMap<string, ArtFile> = this.files): Plan {
        this.checkpoint('plan');
        const arts = new Map<string, ArtState>();
        const versions = recipe.arts.map(({ uri }) => files.get(uri)?.version ?? '');
        // Places and all: findings and figures point at them.
        const key = JSON.stringify([recipe, versions]);
        if (this.last?.key === key) return this.last.plan;
        for (const source of recipe.arts) {
            const file = files.get(source.uri) ?? { uri: source.uri, version: 'never read', problem: 'missing' as const };
            const key = `${file.uri} ${file.version} ${contentKey(source.width?.value, source.height?.value)}`;
            arts.set(
                source.name,
                this.memo.get('art', key, () => readArt(source, file)),
            );
        }
        const plan = makePlan(recipe, arts, this.memo);
        this.last = { key, plan };
        return plan;
    }
}

function sectionAt(plan: Plan, { frame, blank: name, y }: SectionJob): SectionView | null {
    const face = plan.faces[frame]?.find((candidate) => candidate.blank === name);
    const blank = plan.blanks.find((candidate) => candidate.name === name);
    return face === undefined || blank === undefined ? null : sectionView(plan, face, blank, y);
}

/** The day on which the work is said to begin is the day that the plan is for. */
function startingOn(recipe: Recipe, start: number | undefined): Recipe {
    return start === undefined ? recipe : { ...recipe, today: isoMoment(start).slice(0, 10) };
}
