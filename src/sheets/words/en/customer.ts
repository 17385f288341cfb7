/** The customer sheet. Written for someone who has never heard of a path length. */
export const customer = {
  'customer.title': 'Where the sound comes from in your car',
  'customer.cautions': 'Before anything is cut',
};
