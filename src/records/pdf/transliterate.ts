/**
 * Letters that the fonts of every PDF reader lack, in Latin ones: rough, for reading and not for an authority.
 *
 * Cyrillic, Hebrew, Arabic, Japanese kana and Korean; marks on Latin letters are dropped when nothing better is
 * there. Chinese characters and all other scripts have no spelling here and are shown as their number, `‹U+6F22›`.
 */

const CYRILLIC = pairs(
  'а a б b в v г g д d е e ё yo ж zh з z и i й y к k л l м m н n о o п p р r с s т t у u ф f х kh ц ts ч ch ш sh щ shch ъ " ы y ь \' э e ю yu я ya і i ї yi є ye ґ g ў w ј j љ lj њ nj ћ c ђ dj џ dz ѕ dz ќ k ѓ g',
);
const HEBREW = pairs(
  "א ' ב b ג g ד d ה h ו v ז z ח ch ט t י y ך k כ k ל l ם m מ m ן n נ n ס s ע ' ף p פ p ץ ts צ ts ק q ר r ש sh ת t",
);
const ARABIC = pairs(
  "ا a أ a إ i آ aa ب b ت t ث th ج j ح h خ kh د d ذ dh ر r ز z س s ش sh ص s ض d ط t ظ z ع ' غ gh ف f ق q ك k ل l م m ن n ه h و w ي y ى a ة h ء ' ئ ' ؤ ' پ p چ ch ژ zh گ g ک k ی y ، , ؟ ? ؛ ; ٠ 0 ١ 1 ٢ 2 ٣ 3 ٤ 4 ٥ 5 ٦ 6 ٧ 7 ٨ 8 ٩ 9 ۰ 0 ۱ 1 ۲ 2 ۳ 3 ۴ 4 ۵ 5 ۶ 6 ۷ 7 ۸ 8 ۹ 9",
);
const KANA = pairs(
  'あ a い i う u え e お o か ka き ki く ku け ke こ ko さ sa し shi す su せ se そ so た ta ち chi つ tsu て te と to な na に ni ぬ nu ね ne の no は ha ひ hi ふ fu へ he ほ ho ま ma み mi む mu め me も mo や ya ゆ yu よ yo ら ra り ri る ru れ re ろ ro わ wa を wo ん n が ga ぎ gi ぐ gu げ ge ご go ざ za じ ji ず zu ぜ ze ぞ zo だ da ぢ ji づ zu で de ど do ば ba び bi ぶ bu べ be ぼ bo ぱ pa ぴ pi ぷ pu ぺ pe ぽ po ゔ vu ぁ a ぃ i ぅ u ぇ e ぉ o ゃ ya ゅ yu ょ yo っ t ー - 、 , 。 . 「 " 」 "',
);
const SPELLING = new Map([...CYRILLIC, ...HEBREW, ...ARABIC, ...KANA]);

/** Korean syllables are counted: first sound times 588, vowel times 28, last sound (Unicode, 3.12). */
const FIRST = 'g kk n d tt r m b pp s ss  j jj ch k t p h'.split(' ');
const VOWEL = 'a ae ya yae eo e yeo ye o wa wae oe yo u wo we wi yu eu ui i'.split(' ');
const LAST = ' k k k n n n t l k m l l l p l m p p t t ng t t k t p t'.split(' ');
const HANGUL_FIRST = 0xac00;
const HANGUL_LAST = 0xd7a3;
/** Katakana lie this far above hiragana. */
const KATAKANA_SHIFT = 0x60;

/** The sign in Latin letters, or null when there is no spelling for it. */
export function transliterate(sign: string): string | null {
  const point = sign.codePointAt(0) ?? 0;
  if (point >= HANGUL_FIRST && point <= HANGUL_LAST) return korean(point - HANGUL_FIRST);
  if (point >= 0x30a1 && point <= 0x30f6)
    return SPELLING.get(String.fromCodePoint(point - KATAKANA_SHIFT)) ?? null;
  const exact = SPELLING.get(sign);
  if (exact !== undefined) return exact;
  const small = sign.toLowerCase();
  const spelled = small === sign ? undefined : SPELLING.get(small);
  if (spelled !== undefined) return spelled.charAt(0).toUpperCase() + spelled.slice(1);
  // A Latin letter whose marks no font has, a full-width letter, a ligature.
  const plain = sign.normalize('NFKD').replace(/\p{M}/gu, '');
  if (plain !== sign && /^[\x20-\x7e]+$/.test(plain)) return plain;
  return /^\p{M}$/u.test(sign) ? '' : null;
}

function korean(count: number): string {
  const first = FIRST[Math.floor(count / 588)] ?? '';
  const vowel = VOWEL[Math.floor((count % 588) / 28)] ?? '';
  return first + vowel + (LAST[count % 28] ?? '');
}

function pairs(list: string): [string, string][] {
  const words = list.split(' ');
  return words.flatMap((word, i) => (i % 2 === 0 ? [[word, words[i + 1] ?? '']] : []));
}
