import { Caution } from '../../ui/index.ts';

/** Safari on a phone tells whether the page was opened from the home screen; other browsers say nothing. */
type SafariNavigator = Navigator & { readonly standalone?: boolean };

/** True in a tab of Safari on a phone: its jobs are not those of the home screen's app, and do not stay for ever. */
const inSafariTab = (browser: SafariNavigator): boolean => browser.standalone === false;

/** Said before a job is entered, not after it is gone. */
export function TabWarning() {
  if (!inSafariTab(navigator)) return null;
  return (
    <Caution title="this is a tab">
      Add Swingtape to the home screen before you enter a job, and open it from there: tap Share, then Add to
      Home Screen. The app there keeps jobs of its own, and Safari may delete those of a tab that is not used
      for a week. A job that is already here can be backed up, and restored there.
    </Caution>
  );
}
