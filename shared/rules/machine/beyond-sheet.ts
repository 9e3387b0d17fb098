import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'beyond-sheet',
    title: 'Blank larger than the sheet',
    severities: ['warning'],
    condition: 'A blank does not fit the sheet or board that it is cut from, with its grain along the sheet’s.',
    why: 'It cannot be cut. The grain of boards and veneers runs along their longer side, so a blank with a grain cannot lie across.',
    mend: 'Choose a larger sheet, a smaller blank, or turn the grain of the blank; or correct the `sheet` of the stock.',
    source: commonPractice,
};

export const beyondSheet: Rule = {
    page,
    *examine(plan) {
        for (const { sheet, size, yielded } of plan.cuttings) {
            for (const { blank, name, size: blankSize } of plan.blanks) {
                if (blank.sheet?.name !== sheet.name || blankSize === undefined || !yielded.tooLarge.includes(name)) continue;
                const unit = blank.size?.width.unit;
                const grain = blank.grain === undefined ? '' : phrase` with its grain along the ${blank.grain}`;
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`${name}, ${showLength(blankSize.width, unit)} x ${showLength(blankSize.height, unit)}${grain}, does not fit a sheet of ${sheet.name}: ${showLength(size.width, unit)} x ${showLength(size.height, unit)}. Make the blank smaller, glue boards up, or write the size of a larger sheet.`,
                    where: blank.size?.where ?? blank.where,
                    related:
                        sheet.sheet === undefined
                            ? []
                            : [{ message: phrase`The sheet’s size is written here.`, where: sheet.sheet.where }],
                });
            }
        }
    },
};
