// The papers to look at before a spade goes in: asked for once, never judged.

/** Each by the word of the plan's `papers` key, with what it is in a sentence. */
export const papers: Readonly<Record<string, string>> = {
  title: "title, and whose each boundary is",
  "rights of way": "rights of way",
  easements: "easements and wayleaves of pipes and wires",
  covenants: "covenants",
  planning: "planning or permits for tracks, terraces and changes of level",
  access: "a licence to make or alter an access to the road",
  felling: "felling and protected trees",
  heritage: "heritage and listing",
  species: "protected plants and animals",
  flooding: "flood zone",
  watercourse: "consent to touch a watercourse",
  neighbours: "notice to neighbours",
  waste: "papers for what is brought in or taken away",
};
