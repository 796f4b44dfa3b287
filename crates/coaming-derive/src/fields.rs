//! `#[derive(Fields)]`.

use proc_macro2::TokenStream;
use quote::{format_ident, quote};
use syn::parse::{Parse, ParseStream};
use syn::spanned::Spanned;
use syn::{Data, DeriveInput, Error, Expr, Ident, Result, Token};

use crate::attributes::{doc, range, text};

/// `#[also(included_angle, conversion)]`.
struct Also {
    name: Ident,
    convert: Expr,
}

impl Parse for Also {
    fn parse(input: ParseStream<'_>) -> Result<Self> {
        let name = input.parse()?;
        input.parse::<Token![,]>()?;
        Ok(Self { name, convert: input.parse()? })
    }
}

pub(crate) fn derive(input: &DeriveInput) -> Result<TokenStream> {
    let Data::Struct(body) = &input.data else {
        return Err(Error::new(input.span(), "Fields is for structs with named fields"));
    };
    if !input.generics.params.is_empty() {
        return Err(Error::new(input.generics.span(), "a record has no generic parameters"));
    }
    let name = &input.ident;
    let name_text = name.to_string();
    let type_doc = doc(&input.attrs, name.span(), "a record")?;

    let mut rows = Vec::new();
    let mut idents = Vec::new();
    let mut types = Vec::new();
    let mut conversions = Vec::new();
    for (place, field) in body.fields.iter().enumerate() {
        let ident = field.ident.as_ref().ok_or_else(|| Error::new(field.span(), "fields must be named"))?;
        let ty = &field.ty;
        let ident_text = ident.to_string();
        let field_doc = doc(&field.attrs, field.span(), "a field")?;
        let possible = range(&field.attrs, "possible")?;
        let tested = range(&field.attrs, "tested")?;
        let unit = match text(&field.attrs, "shown_in")? {
            Some(unit) => quote!(#unit),
            None => quote!(<#ty as ::coaming::declaration::Value>::KIND.shop_unit()),
        };
        let also = match field.attrs.iter().find(|attribute| attribute.path().is_ident("also")) {
            Some(attribute) => {
                let Also { name: second, convert } = attribute.parse_args()?;
                let second = second.to_string();
                let row = format_ident!("ALSO_{}", conversions.len());
                conversions.push((place, ident.clone(), row.clone()));
                let field_row = quote!(::core::option::Option::Some(::coaming::declaration::Also {
                    name: #second,
                    convert: #convert,
                }));
                (field_row, Some(row))
            }
            None => (quote!(::core::option::Option::None), None),
        };
        let also_row = also.0;
        rows.push(quote! {
            ::coaming::declaration::Field {
                name: #ident_text,
                doc: #field_doc,
                kind: <#ty as ::coaming::declaration::Value>::KIND,
                unit: #unit,
                possible: #possible,
                tested: #tested,
                also: #also_row,
            }
        });
        idents.push(ident);
        types.push(ty);
    }
    let places: Vec<usize> = (0..idents.len()).collect();
    let count = idents.len();
    // Second conventions have the places behind the last field.
    let also_arms = conversions.iter().enumerate().map(|(nth, (place, ident, _))| {
        let key_place = count + nth;
        quote! {
            #key_place => match &FIELDS[#place].also {
                ::core::option::Option::Some(also) =>
                    ::coaming::declaration::put_converted(&mut self.#ident, map, at, &FIELDS[#place], also),
                ::core::option::Option::None => ::core::result::Result::Ok(()),
            }
        }
    });

    Ok(quote! {
        const _: () = {
            static FIELDS: [::coaming::declaration::Field; #count] = TABLE;
            // The table as a constant too, so that `check` sees its ranges as literals.
            const TABLE: [::coaming::declaration::Field; #count] = [#(#rows),*];

            #[derive(::core::default::Default)]
            struct Slots { #( #idents: ::core::option::Option<#types>, )* }

            impl ::coaming::declaration::Slots for Slots {
                type Record = #name;

                fn put<'de, M: ::coaming::serde::de::MapAccess<'de>>(
                    &mut self,
                    place: usize,
                    map: &mut M,
                    at: &::coaming::declaration::At<'_>,
                ) -> ::core::result::Result<(), M::Error> {
                    match place {
                        #( #places => ::coaming::declaration::put_into(&mut self.#idents, map, at, &FIELDS[#places]), )*
                        #( #also_arms, )*
                        _ => ::core::result::Result::Ok(()),
                    }
                }

                fn finish<E: ::coaming::serde::de::Error>(
                    self,
                    at: &::coaming::declaration::At<'_>,
                ) -> ::core::result::Result<#name, E> {
                    ::core::result::Result::Ok(#name {
                        #( #idents: ::coaming::declaration::take(self.#idents, at, &FIELDS[#places])?, )*
                    })
                }
            }

            impl ::coaming::declaration::Value for #name {
                const KIND: ::coaming::declaration::Kind = ::coaming::declaration::Kind::Record(
                    <#name as ::coaming::declaration::Fields>::RECORD,
                );

                fn read<'de, D: ::coaming::serde::de::Deserializer<'de>>(
                    source: D,
                    at: &::coaming::declaration::At<'_>,
                ) -> ::core::result::Result<Self, D::Error> {
                    ::coaming::declaration::read_record::<Slots, D>(source, at, &FIELDS)
                }

                fn write(&self, _: &'static ::coaming::declaration::Field) -> ::coaming::declaration::Node {
                    ::coaming::declaration::Node::Record(::std::vec![
                        #( (
                            ::std::borrow::Cow::Borrowed(FIELDS[#places].name),
                            ::coaming::declaration::Value::write(&self.#idents, &FIELDS[#places]),
                        ), )*
                    ])
                }

                #[inline]
                fn check_within(
                    &self,
                    _: &'static ::coaming::declaration::Field,
                    path: &::coaming::declaration::Path<'_>,
                    caveats: &mut ::coaming::Caveats,
                ) -> ::core::result::Result<(), ::coaming::Error> {
                    ::coaming::declaration::Fields::check(self, path, caveats)
                }
            }

            impl ::coaming::declaration::Fields for #name {
                const RECORD: &'static ::coaming::declaration::Record = &::coaming::declaration::Record {
                    name: #name_text,
                    doc: #type_doc,
                    fields: &TABLE,
                };

                #[inline]
                fn get(&self, place: usize) -> ::core::option::Option<f64> {
                    match place {
                        #( #places => ::coaming::declaration::Value::si(&self.#idents), )*
                        _ => ::core::option::Option::None,
                    }
                }

                #[inline]
                fn set(&mut self, place: usize, si: f64) -> bool {
                    match place {
                        #( #places => match ::coaming::declaration::Value::from_si(si) {
                            ::core::option::Option::Some(value) => { self.#idents = value; true }
                            ::core::option::Option::None => false,
                        }, )*
                        _ => false,
                    }
                }

                #[inline]
                fn check(
                    &self,
                    path: &::coaming::declaration::Path<'_>,
                    caveats: &mut ::coaming::Caveats,
                ) -> ::core::result::Result<(), ::coaming::Error> {
                    #( ::coaming::declaration::Value::check_within(
                        &self.#idents, &FIELDS[#places], &path.member(TABLE[#places].name), caveats,
                    )?; )*
                    ::core::result::Result::Ok(())
                }
            }
        };
    })
}
