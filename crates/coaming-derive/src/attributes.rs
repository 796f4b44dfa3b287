//! What is read from a type: doc comments, ranges, names.

use proc_macro2::{Span, TokenStream};
use quote::quote;
use syn::spanned::Spanned;
use syn::{Attribute, Error, Expr, Lit, LitStr, Meta, RangeLimits, Result};

/// The doc comment, line by line, without the blank that stands behind `///`.
pub(crate) fn doc(attributes: &[Attribute], span: Span, of: &str) -> Result<String> {
    let mut lines = Vec::new();
    for attribute in attributes {
        if let Meta::NameValue(pair) = &attribute.meta
            && pair.path.is_ident("doc")
            && let Expr::Lit(literal) = &pair.value
            && let Lit::Str(text) = &literal.lit
        {
            let line = text.value();
            lines.push(line.strip_prefix(' ').unwrap_or(&line).to_owned());
        }
    }
    let doc = lines.join("\n").trim().to_owned();
    if doc.is_empty() {
        Err(Error::new(span, format!("{of} needs a doc comment: every language shows it")))
    } else {
        Ok(doc)
    }
}

/// A range attribute as a closed pair; an open upper bound is stored just below it.
pub(crate) fn range(attributes: &[Attribute], name: &str) -> Result<TokenStream> {
    let Some(attribute) = attributes.iter().find(|attribute| attribute.path().is_ident(name)) else {
        return Ok(quote!(::coaming::declaration::UNBOUNDED));
    };
    let Expr::Range(range) = attribute.parse_args()? else {
        return Err(Error::new(attribute.span(), "a range is due, such as `0.0..=1.0`"));
    };
    let low = range.start.map_or_else(|| quote!(f64::NEG_INFINITY), |low| quote!(#low));
    let high = match (range.end, range.limits) {
        (None, _) => quote!(f64::INFINITY),
        (Some(high), RangeLimits::Closed(_)) => quote!(#high),
        (Some(high), RangeLimits::HalfOpen(_)) => quote!(f64::next_down(#high)),
    };
    Ok(quote!((#low, #high)))
}

/// The text of an attribute such as `#[shown_in("MPa")]`.
pub(crate) fn text(attributes: &[Attribute], name: &str) -> Result<Option<LitStr>> {
    attributes.iter().find(|attribute| attribute.path().is_ident(name)).map(Attribute::parse_args).transpose()
}

/// `ClearanceHole` as `clearance_hole`.
pub(crate) fn snake_case(name: &str) -> String {
    let mut snake = String::new();
    for (place, letter) in name.char_indices() {
        if letter.is_uppercase() && place > 0 {
            snake.push('_');
        }
        snake.extend(letter.to_lowercase());
    }
    snake
}

/// The name of an option: its attribute, or its variant in snake case.
pub(crate) fn option_name(variant: &syn::Variant) -> Result<String> {
    Ok(match text(&variant.attrs, "option")? {
        Some(given) => given.value(),
        None => snake_case(&variant.ident.to_string()),
    })
}
