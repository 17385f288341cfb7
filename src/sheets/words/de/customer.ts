export const customer = {
  'customer.title': 'Woher der Klang in Ihrem Auto kommt',
  'customer.cautions': 'Bevor geschnitten wird',
};
