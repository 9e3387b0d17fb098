import type { Page } from '../../shared/rules/page';
import { hint, mendable, page, warning } from './text-page';

/** What is said of runs and of the issues that they followed. */
export const runPages: readonly Page[] = [
    page(
        'run-elsewhere',
        warning,
        'A run far from its recipe',
        'A run stands in a file outside of the folder of its recipe, and the recipe’s file does not use that file.',
        'It is not counted: neither in the fit, nor in the history. Who opens the recipe alone would never see it.',
        'Move the file into the folder of the recipe or below it, such as into `runs`.',
    ),
    page(
        'run-twice',
        mendable(warning),
        'The same run twice',
        'Two runs of one recipe have the same day and say word for word the same.',
        'A measured depth that counts twice pulls the fit and makes its interval too narrow.',
        'Remove one of them. If the piece was really made twice with the same figures, a `note` in each says so.',
    ),
    page(
        'run-figures',
        mendable(warning),
        'Two figures for one step',
        'A run gives two depths, or two widths, for one step on one board; or more depths after passes than it had passes, or one that is less deep than the one before it.',
        'One of them is a slip or belongs to another piece; both count.',
        'Remove the wrong one. What was burnt and measured a second time is a run of its own; a day can have several.',
    ),
    page(
        'run-ahead',
        warning,
        'A run that is still to come',
        'The day of a run lies after today.',
        'Runs are put in order by their days, and the latest ones say how the laser burns now.',
        'Write the day on which the piece was made.',
    ),
    page(
        'run-depth-of-tone',
        warning,
        'A depth for a tone',
        'A run gives a depth for a step that is burnt to a `tone`.',
        'The step plans no depth, so nothing can be held against it, and it is left out of the fit of depths.',
        'Remove the depth, or give the step a `depth`.',
    ),
    page(
        'issue-kept',
        mendable(hint),
        'A changed recipe with the issue of its last run',
        'The recipe, or stock that it names, says something else than it did for its last run, and `issue` is the same.',
        'Who reads the issue on the job sheet or in a run takes the two for one recipe. Comments, layout, the title, prices, coupons and the number of pieces are no change.',
        'Count the issue up. Nothing is said where a recipe has no `issue`, or where its runs keep no `of plan`.',
    ),
    page(
        'issue-twice',
        mendable(warning),
        'One issue for two recipes',
        'Two runs bear the same `issue`, and the fingerprints behind `of plan` say that the recipe was another one for each.',
        'It comes about where two branches both count up to the same issue, or where a recipe is changed and its issue is not.',
        'Give one of the runs another number, and the recipe a higher one. The runs keep their depths and settings either way.',
    ),
];
