/** When the page itself fails: what happened, what is safe, what to do. */
export const crash = {
  title: 'Something on this page failed.',
  kept: 'The plan is as it was after your last step. Save it as a file to be sure, then reload the page.',
  lost: 'The page could not start. Reload it; plans kept in this browser are still there.',
  save: 'Save the plan as a file',
  reload: 'Reload the page',
  empty: 'Go on with an empty plan',
  what: 'What the page reported',
} as const;
