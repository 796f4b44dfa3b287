//! `#[derive(OneOf)]`.

use proc_macro2::TokenStream;
use quote::quote;
use syn::spanned::Spanned;
use syn::{Data, DeriveInput, Error, Fields, Result};

use crate::attributes::{doc, option_name};

pub(crate) fn derive(input: &DeriveInput) -> Result<TokenStream> {
    let Data::Enum(body) = &input.data else {
        return Err(Error::new(input.span(), "OneOf is for enums"));
    };
    let name = &input.ident;
    let name_text = name.to_string();
    let type_doc = doc(&input.attrs, name.span(), "a set of alternatives")?;
    let (mut options, mut variants, mut keys) = (Vec::new(), Vec::new(), Vec::new());
    for variant in &body.variants {
        let Fields::Unnamed(held) = &variant.fields else {
            return Err(Error::new(variant.span(), "an alternative holds one record; see Choice"));
        };
        let Some(ty) = held.unnamed.first().filter(|_| held.unnamed.len() == 1).map(|field| &field.ty) else {
            return Err(Error::new(variant.span(), "an alternative holds one record"));
        };
        let key = option_name(variant)?;
        let option_doc = doc(&variant.attrs, variant.span(), "an alternative")?;
        options.push(quote!((#key, #option_doc, <#ty as ::coaming::declaration::Value>::KIND)));
        variants.push(&variant.ident);
        keys.push(key);
    }
    let places: Vec<usize> = (0..variants.len()).collect();
    let last =
        places.last().copied().ok_or_else(|| Error::new(input.span(), "alternatives need a variant"))?;
    let (last_variant, last_key) = (&variants[last], &keys[last]);
    let (first_places, first_variants, first_keys) = (&places[..last], &variants[..last], &keys[..last]);
    Ok(quote! {
        const _: () = {
            static ALTERNATIVES: ::coaming::declaration::Alternatives = ::coaming::declaration::Alternatives {
                name: #name_text,
                doc: #type_doc,
                options: &[#(#options),*],
            };

            impl ::coaming::declaration::OneOf for #name {
                const ALTERNATIVES: &'static ::coaming::declaration::Alternatives = &ALTERNATIVES;

                fn read_alternative<'de, M: ::coaming::serde::de::MapAccess<'de>>(
                    place: usize,
                    map: &mut M,
                    at: &::coaming::declaration::At<'_>,
                ) -> ::core::result::Result<Self, M::Error> {
                    match place {
                        #( #first_places => ::coaming::declaration::read_behind(map, at, #first_keys).map(Self::#first_variants), )*
                        _ => ::coaming::declaration::read_behind(map, at, #last_key).map(Self::#last_variant),
                    }
                }
            }

            impl ::coaming::declaration::Value for #name {
                const KIND: ::coaming::declaration::Kind = ::coaming::declaration::Kind::OneOf(&ALTERNATIVES);

                fn read<'de, D: ::coaming::serde::de::Deserializer<'de>>(
                    source: D,
                    at: &::coaming::declaration::At<'_>,
                ) -> ::core::result::Result<Self, D::Error> {
                    ::coaming::declaration::read_one_of(source, at)
                }

                fn write(&self, field: &'static ::coaming::declaration::Field) -> ::coaming::declaration::Node {
                    let (key, held) = match self {
                        #( Self::#variants(held) => (#keys, ::coaming::declaration::Value::write(held, field)), )*
                    };
                    ::coaming::declaration::Node::Record(::std::vec![(::std::borrow::Cow::Borrowed(key), held)])
                }

                fn check_within(
                    &self,
                    field: &'static ::coaming::declaration::Field,
                    path: &::coaming::declaration::Path<'_>,
                    caveats: &mut ::coaming::Caveats,
                ) -> ::core::result::Result<(), ::coaming::Error> {
                    match self {
                        #( Self::#variants(held) => ::coaming::declaration::Value::check_within(
                            held, field, &::coaming::declaration::path_behind(path, #keys), caveats,
                        ), )*
                    }
                }
            }
        };
    })
}
