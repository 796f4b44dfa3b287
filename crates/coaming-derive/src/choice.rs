//! `#[derive(Choice)]`.

use proc_macro2::TokenStream;
use quote::quote;
use syn::spanned::Spanned;
use syn::{Data, DeriveInput, Error, Fields, Result};

use crate::attributes::{doc, option_name};

pub(crate) fn derive(input: &DeriveInput) -> Result<TokenStream> {
    let Data::Enum(body) = &input.data else {
        return Err(Error::new(input.span(), "Choice is for plain enums"));
    };
    let name = &input.ident;
    let name_text = name.to_string();
    let type_doc = doc(&input.attrs, name.span(), "a choice")?;
    let mut options = Vec::new();
    let mut variants = Vec::new();
    for variant in &body.variants {
        if !matches!(variant.fields, Fields::Unit) {
            return Err(Error::new(variant.span(), "an option of a choice holds nothing; see OneOf"));
        }
        let option = option_name(variant)?;
        let option_doc = doc(&variant.attrs, variant.span(), "an option")?;
        options.push(quote!((#option, #option_doc)));
        variants.push(&variant.ident);
    }
    let numbers = 0..variants.len() as u32;
    let numbers: Vec<u32> = numbers.collect();
    Ok(quote! {
        const _: () = {
            static CHOICES: ::coaming::declaration::Choices = ::coaming::declaration::Choices {
                name: #name_text,
                doc: #type_doc,
                options: &[#(#options),*],
            };

            impl ::coaming::declaration::Choice for #name {
                const CHOICES: &'static ::coaming::declaration::Choices = &CHOICES;

                fn number(self) -> u32 {
                    match self { #( Self::#variants => #numbers, )* }
                }

                fn from_number(number: u32) -> ::core::option::Option<Self> {
                    match number { #( #numbers => ::core::option::Option::Some(Self::#variants), )* _ => ::core::option::Option::None }
                }
            }

            impl ::coaming::declaration::Value for #name {
                const KIND: ::coaming::declaration::Kind = ::coaming::declaration::Kind::Choice(&CHOICES);

                fn read<'de, D: ::coaming::serde::de::Deserializer<'de>>(
                    source: D,
                    at: &::coaming::declaration::At<'_>,
                ) -> ::core::result::Result<Self, D::Error> {
                    ::coaming::declaration::read_choice(source, at)
                }

                fn write(&self, _: &'static ::coaming::declaration::Field) -> ::coaming::declaration::Node {
                    ::coaming::declaration::Node::Text(::coaming::declaration::Choice::name(*self).to_owned())
                }
            }
        };
    })
}
