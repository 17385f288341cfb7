export const room = {
  'paper.customer': 'Kundenblatt',
  'paper.mark-out': 'Anreißblatt',
  'paper.ring': 'Ringblatt',
  'paper.tune': 'Einstellblatt',
  'paper.book': 'Baumappe',
  'page.number': '{page} / {pages}',
  'page.made-with': 'Erstellt mit Earpath, {date}',
  'paper.nothing':
    'Dieser Plan lässt sich nicht berechnen. Das Programm meldet dazu auf Englisch: „{reason}“.',
};
