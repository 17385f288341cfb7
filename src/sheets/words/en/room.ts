/** What stands on every paper: heads and feet of pages, and what papers are called. */
export const room = {
  'paper.customer': 'Customer sheet',
  'paper.mark-out': 'Mark-out sheet',
  'paper.ring': 'Ring sheet',
  'paper.tune': 'Tune sheet',
  'paper.book': 'Build book',
  'page.number': '{page} / {pages}',
  'page.made-with': 'Made with Earpath, {date}',
  'paper.nothing': 'This plan cannot be worked out: {reason}',
};
